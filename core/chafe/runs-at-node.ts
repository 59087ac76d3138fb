import type { MapDocument } from '../map/map-document.ts';
import type { Segment } from '../map/records.ts';
import type { NodeId, SegmentId } from '../quantity/id.ts';

const known = new WeakMap<MapDocument['segments'], Map<NodeId, Segment[]>>();
const none: readonly Segment[] = [];

/**
 * The runs that meet at a node. The table is built once per table of runs.
 * @example
 * runsAtNode(sample.map, 'node:middle').length // => 2
 */
export function runsAtNode(map: MapDocument, nodeId: NodeId): readonly Segment[] {
  let table = known.get(map.segments);
  if (!table) {
    table = new Map();
    for (const segment of map.segments.values()) {
      put(table, segment.fromNodeId, segment);
      if (segment.toNodeId !== segment.fromNodeId) put(table, segment.toNodeId, segment);
    }
    known.set(map.segments, table);
  }
  return table.get(nodeId) ?? none;
}

/**
 * Hands what is known of one map's nodes on to the map after an edit; `changed` are all the runs that differ.
 * O(nodes) to copy, nothing to look through.
 * @example
 * carryRunsAtNode(sample.map, sample.map, []) // => undefined
 */
export function carryRunsAtNode(before: MapDocument, after: MapDocument, changed: Iterable<SegmentId>): void {
  const table = known.get(before.segments);
  if (!table || known.has(after.segments)) return;
  const next = new Map(table);
  for (const id of changed) {
    const was = before.segments.get(id);
    const is = after.segments.get(id);
    for (const nodeId of was ? [was.fromNodeId, was.toNodeId] : []) {
      next.set(
        nodeId,
        (next.get(nodeId) ?? []).filter((each) => each.id !== id),
      );
    }
    for (const nodeId of is ? new Set([is.fromNodeId, is.toNodeId]) : []) {
      next.set(nodeId, [...(next.get(nodeId) ?? []), is as Segment]);
    }
  }
  known.set(after.segments, next);
}

function put(table: Map<NodeId, Segment[]>, nodeId: NodeId, segment: Segment): void {
  const held = table.get(nodeId);
  if (held) held.push(segment);
  else table.set(nodeId, [segment]);
}
