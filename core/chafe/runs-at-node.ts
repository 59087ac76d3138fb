import type { MapDocument } from '../map/map-document.ts';
import type { Segment } from '../map/records.ts';
import type { NodeId } from '../quantity/id.ts';

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

function put(table: Map<NodeId, Segment[]>, nodeId: NodeId, segment: Segment): void {
  const held = table.get(nodeId);
  if (held) held.push(segment);
  else table.set(nodeId, [segment]);
}
