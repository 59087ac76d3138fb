import type { MapDocument } from '../map/map-document.ts';
import { offClosure } from '../map/panel-order.ts';
import type { NodeId, PanelId } from '../quantity/id.ts';
import type { JobEntry } from './job-document.ts';

/**
 * Tells of a node whether it can be got at as the car stands: nothing over it must still come off, or
 * somebody has looked into it since a panel over it was last put back.
 * @example
 * placesInReach(sample.map, [], new Set())('node:middle') // => true
 */
export function placesInReach(
  map: MapDocument,
  entries: readonly JobEntry[],
  off: ReadonlySet<PanelId>,
): (nodeId: NodeId) => boolean {
  const over = (nodeId: NodeId): ReadonlySet<PanelId> =>
    offClosure(map.panels, map.nodes.get(nodeId)?.panelIds ?? []);
  const seen = new Set<NodeId>();
  for (const entry of entries) {
    if (entry.type === 'inspection') for (const id of entry.nodeIds ?? []) seen.add(id);
    if (entry.type === 'panel-on') for (const id of seen) if (over(id).has(entry.panelId)) seen.delete(id);
  }
  return (nodeId) => seen.has(nodeId) || [...over(nodeId)].every((panelId) => off.has(panelId));
}
