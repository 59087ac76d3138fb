import type { MapDocument } from '#core/map/map-document.ts';
import type { NodeId } from '#core/quantity/id.ts';

const drawnTables = ['outlines', 'panels', 'segments', 'rubSpots', 'nodes'] as const;

/**
 * Ids of all that is drawn otherwise in one state of a map than in another: what came, went or became
 * something else, and the runs whose nodes moved. Tables that are the same object are not walked.
 */
export function changedThings(before: MapDocument, after: MapDocument): ReadonlySet<string> {
  const changed = new Set<string>();
  if (before === after) return changed;
  for (const name of drawnTables) {
    const old: ReadonlyMap<string, unknown> = before[name];
    const now: ReadonlyMap<string, unknown> = after[name];
    if (old === now) continue;
    let kept = 0;
    for (const [id, record] of now) {
      const earlier = old.get(id);
      if (earlier !== undefined) kept++;
      if (earlier !== record) changed.add(id);
    }
    if (kept < old.size) for (const id of old.keys()) if (!now.has(id)) changed.add(id);
  }
  const nodes = new Set([...changed].filter((id) => id.startsWith('node:'))) as Set<NodeId>;
  if (nodes.size === 0) return changed;
  for (const { id, fromNodeId, toNodeId } of after.segments.values()) {
    if (nodes.has(fromNodeId) || nodes.has(toNodeId)) changed.add(id);
  }
  return changed;
}
