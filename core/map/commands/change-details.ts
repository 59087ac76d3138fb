import type { Result } from '../../quantity/result.ts';
import type { MapDocument } from '../map-document.ts';
import { draftOf } from '../map-draft.ts';
import type { Patch } from '../patch.ts';
import type { MapDetails } from '../records.ts';

/**
 * Changes what the map as a whole is of: its name, body, side of drive, centre line or note. The scale
 * is `setScale`'s. Refuses `bad-field`.
 * @example
 * changeDetails(sample.map, { changes: { name: 'Estate' } }).value.changed[0][1].name // => 'Estate'
 */
export function changeDetails(
  map: MapDocument,
  input: { readonly changes: Partial<Omit<MapDetails, 'id' | 'scale'>> },
): Result<Patch> {
  const draft = draftOf(map);
  draft.put({ ...map.details, ...input.changes });
  return draft.finish();
}
