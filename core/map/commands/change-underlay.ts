import type { UnderlayId } from '../../quantity/id.ts';
import type { Result } from '../../quantity/result.ts';
import { findRecord } from '../find-record.ts';
import type { MapDocument } from '../map-document.ts';
import { draftOf } from '../map-draft.ts';
import type { Patch } from '../patch.ts';
import type { Underlay } from '../records.ts';

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
