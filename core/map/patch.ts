import { assert } from '../quantity/assert.ts';
import { idKind } from '../quantity/id.ts';
import { fail, ok, type Result } from '../quantity/result.ts';
import {
  type MapDocument,
  type MapRecord,
  type TableKind,
  type TableName,
  tableOfKind,
} from './map-document.ts';

/** A change to a map as whole records: what came, what went, and what became what. */
export interface Patch {
  readonly added: readonly MapRecord[];
  readonly removed: readonly MapRecord[];
  readonly changed: readonly (readonly [before: MapRecord, after: MapRecord])[];
}

/** The patch that changes nothing. */
export const emptyPatch: Patch = { added: [], removed: [], changed: [] };

/**
 * Builds a patch, leaving out what a caller does not name.
 * @example
 * patchOf({ added: [] }) // => { added: [], removed: [], changed: [] }
 */
export function patchOf(parts: Partial<Patch>): Patch {
  return { ...emptyPatch, ...parts };
}

/**
 * Whether a patch changes nothing.
 * @example
 * isEmptyPatch(emptyPatch) // => true
 */
export function isEmptyPatch(patch: Patch): boolean {
  return patch.added.length + patch.removed.length + patch.changed.length === 0;
}

/**
 * The patch that takes another back: applying both, in turn, is identity.
 * @example
 * invertPatch(emptyPatch) // => { added: [], removed: [], changed: [] }
 */
export function invertPatch(patch: Patch): Patch {
  return {
    added: patch.removed,
    removed: patch.added,
    changed: patch.changed.map(([before, after]) => [after, before] as const),
  };
}

/**
 * The map after a patch. Refuses (`patch-conflict`) to add what is there or to remove or change what
 * is not, so that a stale patch can never overwrite silently. The revision is the store's business and
 * stays as it is. O(size of the touched tables).
 * @example
 * applyPatch(sample.map, emptyPatch).value === sample.map // => true
 */
export function applyPatch(document: MapDocument, patch: Patch): Result<MapDocument> {
  if (isEmptyPatch(patch)) return ok(document);
  const tables = new Map<TableName, Map<string, MapRecord>>();
  let details = document.details;
  const tableFor = (record: MapRecord): Map<string, MapRecord> => {
    const name = tableOfKind[idKind(record.id) as TableKind];
    assert(name, `no table holds ${record.id}`);
    let table = tables.get(name);
    if (!table) {
      table = new Map(document[name] as ReadonlyMap<string, MapRecord>);
      tables.set(name, table);
    }
    return table;
  };
  for (const record of patch.removed) {
    if (!tableFor(record).delete(record.id)) return fail({ code: 'patch-conflict', thing: record.id });
  }
  for (const record of patch.added) {
    const table = tableFor(record);
    if (table.has(record.id)) return fail({ code: 'patch-conflict', thing: record.id });
    table.set(record.id, record);
  }
  for (const [, after] of patch.changed) {
    if (after.id === 'details:map') {
      details = after;
      continue;
    }
    const table = tableFor(after);
    if (!table.has(after.id)) return fail({ code: 'patch-conflict', thing: after.id });
    table.set(after.id, after);
  }
  return ok({ ...document, details, ...Object.fromEntries(tables) });
}

/**
 * One patch that does what two do in turn. Associative; something added and then removed vanishes.
 * @example
 * squashPatches(emptyPatch, emptyPatch) // => { added: [], removed: [], changed: [] }
 */
export function squashPatches(first: Patch, second: Patch): Patch {
  /** What each touched record was before both and is after both; null where it did not exist. */
  const fate = new Map<string, { before: MapRecord | null; after: MapRecord | null }>();
  const note = (id: string, before: MapRecord | null, after: MapRecord | null): void => {
    const known = fate.get(id);
    if (known) known.after = after;
    else fate.set(id, { before, after });
  };
  for (const patch of [first, second]) {
    for (const record of patch.removed) note(record.id, record, null);
    for (const record of patch.added) note(record.id, null, record);
    for (const [before, after] of patch.changed) note(after.id, before, after);
  }
  const added: MapRecord[] = [];
  const removed: MapRecord[] = [];
  const changed: (readonly [MapRecord, MapRecord])[] = [];
  for (const { before, after } of fate.values()) {
    if (before && after) {
      if (before !== after) changed.push([before, after]);
    } else if (after) added.push(after);
    else if (before) removed.push(before);
  }
  return { added, removed, changed };
}
