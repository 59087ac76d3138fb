import type { Result } from '../../quantity/result.ts';
import { addRecord } from '../add-record.ts';
import type { MapDocument } from '../map-document.ts';
import type { Patch } from '../patch.ts';
import type { Circuit } from '../records.ts';

/**
 * Adds a circuit, traced or not yet. Refuses `duplicate-id`, `bad-field` and `missing-reference`.
 * @example
 * addCircuit(sample.map, { circuit: { ...sample.circuit, id: 'circuit:twin' } }).value.added.length // => 1
 */
export function addCircuit(map: MapDocument, input: { readonly circuit: Circuit }): Result<Patch> {
  return addRecord(map, input.circuit);
}
