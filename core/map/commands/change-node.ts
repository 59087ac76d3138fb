import type { NodeId } from '../../quantity/id.ts';
import type { Result } from '../../quantity/result.ts';
import { findRecord } from '../find-record.ts';
import type { MapDocument } from '../map-document.ts';
import { draftOf } from '../map-draft.ts';
import type { Patch } from '../patch.ts';
import type { MapNode } from '../records.ts';

/**
 * Changes anything about a node but its place (`moveNode`). Refuses `not-found`, `bad-field` and
 * `missing-reference`.
 * @example
 * changeNode(sample.map, { nodeId: 'node:east', changes: { name: 'Corner' } }).value.changed[0][1].name // => 'Corner'
 */
export function changeNode(
  map: MapDocument,
  input: { readonly nodeId: NodeId; readonly changes: Partial<Omit<MapNode, 'id' | 'at'>> },
): Result<Patch> {
  const node = findRecord(map.nodes, input.nodeId);
  if (!node.ok) return node;
  const draft = draftOf(map);
  draft.put({ ...node.value, ...input.changes });
  return draft.finish();
}
