import type { CircuitId } from '../../quantity/id.ts';
import type { Result } from '../../quantity/result.ts';
import { findRecord } from '../find-record.ts';
import type { MapDocument } from '../map-document.ts';
import { draftOf } from '../map-draft.ts';
import type { Patch } from '../patch.ts';
import type { Circuit } from '../records.ts';

/**
 * Changes anything about a circuit: name, colours, conductor, ends, pins, fuse, or its path by hand.
 * Refuses `not-found`, `bad-field` and `missing-reference`.
 * @example
 * changeCircuit(sample.map, { circuitId: 'circuit:seat-switch', changes: { fuseA: 10 } }).value.changed[0][1].fuseA // => 10
 */
export function changeCircuit(
  map: MapDocument,
  input: { readonly circuitId: CircuitId; readonly changes: Partial<Omit<Circuit, 'id'>> },
): Result<Patch> {
  const found = findRecord(map.circuits, input.circuitId);
  if (!found.ok) return found;
  const draft = draftOf(map);
  draft.put({ ...found.value, ...input.changes });
  return draft.finish();
}
