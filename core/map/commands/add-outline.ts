import type { Result } from '../../quantity/result.ts';
import { addRecord } from '../add-record.ts';
import type { MapDocument } from '../map-document.ts';
import type { Patch } from '../patch.ts';
import type { Outline } from '../records.ts';

/**
 * Adds an outline of two or more corners. Refuses an id that is taken (`duplicate-id`) and `bad-field`.
 * @example
 * addOutline(sample.map, { outline: { id: 'outline:s', name: '', kind: 'shell', closed: false, vertices: [], order: 0 } }).problem.path // => 'outline:s.vertices'
 */
export function addOutline(map: MapDocument, input: { readonly outline: Outline }): Result<Patch> {
  return addRecord(map, input.outline);
}
