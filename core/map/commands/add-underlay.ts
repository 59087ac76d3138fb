import type { UnderlayId } from '../../quantity/id.ts';
import type { Result } from '../../quantity/result.ts';
import { addRecord } from '../add-record.ts';
import { findRecord } from '../find-record.ts';
import type { MapDocument } from '../map-document.ts';
import { draftOf } from '../map-draft.ts';
import type { Patch } from '../patch.ts';
import type { Underlay } from '../records.ts';

/**
 * Lays a picture under the drawing. Its bytes are kept apart. Refuses `duplicate-id` and `bad-field`.
 * @example
 * addUnderlay(sample.map, { underlay: { id: 'underlay:n' } }).problem.code // => 'bad-field'
 */
export function addUnderlay(map: MapDocument, input: { readonly underlay: Underlay }): Result<Patch> {
  return addRecord(map, input.underlay);
}

/**
 * Changes where a picture lies, how strong it shows or whether it is hidden. Refuses `not-found` and
 * `bad-field`.
 * @example
 * changeUnderlay(sample.map, { underlayId: 'underlay:none', changes: { hidden: true } }).problem.code // => 'not-found'
 */
export function changeUnderlay(
  map: MapDocument,
  input: { readonly underlayId: UnderlayId; readonly changes: Partial<Omit<Underlay, 'id'>> },
): Result<Patch> {
  const found = findRecord(map.underlays, input.underlayId);
  if (!found.ok) return found;
  const draft = draftOf(map);
  draft.put({ ...found.value, ...input.changes });
  return draft.finish();
}
