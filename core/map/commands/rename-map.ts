import type { Result } from '../../quantity/result.ts';
import type { MapDocument } from '../map-document.ts';
import type { Patch } from '../patch.ts';
import { changeDetails } from './change-details.ts';

/**
 * Gives the map another name. Refuses an empty one (`bad-field`).
 * @example
 * renameMap(sample.map, { name: '' }).problem.code // => 'bad-field'
 */
export function renameMap(map: MapDocument, input: { readonly name: string }): Result<Patch> {
  return changeDetails(map, { changes: { name: input.name } });
}
