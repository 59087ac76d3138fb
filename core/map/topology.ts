import { compareText } from '../quantity/compare-text.ts';
import type { NodeId, SegmentId } from '../quantity/id.ts';
import type { MapDocument } from './map-document.ts';
import type { Segment } from './records.ts';

/** The runs that meet at each node; a node without runs is not listed. */
export type RunsAtNodes = ReadonlyMap<NodeId, readonly Segment[]>;

/**
 * Which runs meet at each node. A run whose both ends are one node is listed there once. O(runs).
 * @example
 * runsAtNodes(sample.map).get('node:middle').length // => 2
 */
export function runsAtNodes(map: Pick<MapDocument, 'segments'>): RunsAtNodes {
  const runs = new Map<NodeId, Segment[]>();
  const note = (nodeId: NodeId, segment: Segment): void => {
    const known = runs.get(nodeId);
    if (known) known.push(segment);
    else runs.set(nodeId, [segment]);
  };
  for (const segment of map.segments.values()) {
    note(segment.fromNodeId, segment);
    if (segment.toNodeId !== segment.fromNodeId) note(segment.toNodeId, segment);
  }
  return runs;
}

/**
 * The runs at one node, by id. O(runs); use `runsAtNodes` to ask for many.
 * @example
 * runsAtNode(sample.map, 'node:east').map((run) => run.id) // => ['segment:middle', 'segment:rear']
 */
export function runsAtNode(map: Pick<MapDocument, 'segments'>, nodeId: NodeId): readonly Segment[] {
  return [...map.segments.values()]
    .filter((segment) => segment.fromNodeId === nodeId || segment.toNodeId === nodeId)
    .sort((a, b) => compareText(a.id, b.id));
}

/**
 * The node at the other end of a run.
 * @example
 * farNodeId(sample.segment, 'node:west') // => 'node:middle'
 */
export function farNodeId(segment: Segment, nodeId: NodeId): NodeId {
  return segment.fromNodeId === nodeId ? segment.toNodeId : segment.fromNodeId;
}

/** A piece of harness that hangs together: from each of its runs every other can be reached. */
export interface ConnectedPart {
  readonly segmentIds: readonly SegmentId[];
  readonly nodeIds: readonly NodeId[];
}

/**
 * The separate pieces of harness, largest first, then by their first run's id. Nodes without runs belong
 * to none. O(runs log runs).
 * @example
 * connectedParts(sample.map).map((part) => part.segmentIds.length) // => [3]
 */
export function connectedParts(map: Pick<MapDocument, 'segments'>): readonly ConnectedPart[] {
  const runs = runsAtNodes(map);
  const seen = new Set<NodeId>();
  const parts: ConnectedPart[] = [];
  for (const start of runs.keys()) {
    if (seen.has(start)) continue;
    seen.add(start);
    const nodeIds: NodeId[] = [start];
    const segmentIds = new Set<SegmentId>();
    // The list grows while it is walked: that is the search.
    for (const nodeId of nodeIds) {
      for (const segment of runs.get(nodeId) ?? []) {
        segmentIds.add(segment.id);
        const far = farNodeId(segment, nodeId);
        if (seen.has(far)) continue;
        seen.add(far);
        nodeIds.push(far);
      }
    }
    parts.push({ segmentIds: [...segmentIds].sort(compareText), nodeIds: nodeIds.sort(compareText) });
  }
  return parts.sort(
    (a, b) =>
      b.segmentIds.length - a.segmentIds.length || compareText(a.segmentIds[0] ?? '', b.segmentIds[0] ?? ''),
  );
}
