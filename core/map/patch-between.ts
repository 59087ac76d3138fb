import { type MapDocument, type MapRecord, tableOfKind } from './map-document.ts';
import type { Patch } from './patch.ts';
import { sameValue } from './same-value.ts';

/**
 * The patch that turns one state of a map into another, record by record by id; the revision is left out. Applying
 * it gives the other state, its inverse leads back. O(records).
 * @example
 * patchBetween(sample.map, { ...sample.map, panels: new Map() }).removed.length // => 2
 */
export function patchBetween(before: MapDocument, after: MapDocument): Patch {
  const added: MapRecord[] = [];
  const removed: MapRecord[] = [];
  const changed: (readonly [MapRecord, MapRecord])[] = [];
  if (!sameValue(before.details, after.details)) changed.push([before.details, after.details]);
  for (const table of Object.values(tableOfKind)) {
    const was = before[table] as ReadonlyMap<string, MapRecord>;
    const is = after[table] as ReadonlyMap<string, MapRecord>;
    for (const [id, record] of was) {
      const other = is.get(id);
      if (!other) removed.push(record);
      else if (!sameValue(record, other)) changed.push([record, other]);
    }
    for (const [id, record] of is) if (!was.has(id)) added.push(record);
  }
  return { added, removed, changed };
}
