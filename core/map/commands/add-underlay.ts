import type { Result } from '../../quantity/result.ts';
import { addRecord } from '../add-record.ts';
import type { MapDocument } from '../map-document.ts';
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
