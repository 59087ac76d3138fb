import type { OutlineId } from '../../quantity/id.ts';
import type { Result } from '../../quantity/result.ts';
import { findRecord } from '../find-record.ts';
import type { MapDocument } from '../map-document.ts';
import { draftOf } from '../map-draft.ts';
import type { Patch } from '../patch.ts';
import type { Outline } from '../records.ts';

/**
 * Changes anything about an outline: its name, kind, corners, handles, whether it is closed, its order.
 * Refuses `not-found` and `bad-field`.
 * @example
 * changeOutline(sample.map, { outlineId: 'outline:none', changes: { name: 'Shell' } }).problem.code // => 'not-found'
 */
export function changeOutline(
  map: MapDocument,
  input: { readonly outlineId: OutlineId; readonly changes: Partial<Omit<Outline, 'id'>> },
): Result<Patch> {
  const outline = findRecord(map.outlines, input.outlineId);
  if (!outline.ok) return outline;
  const draft = draftOf(map);
  draft.put({ ...outline.value, ...input.changes });
  return draft.finish();
}
