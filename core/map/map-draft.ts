import { assert } from '../quantity/assert.ts';
import type { Chance } from '../quantity/chance.ts';
import { type Id, idKind, newId } from '../quantity/id.ts';
import { fail, ok, type Result } from '../quantity/result.ts';
import { fieldProblem } from './field-problem.ts';
import { LayeredTable } from './layered-table.ts';
import {
  type MapDocument,
  type MapRecord,
  type TableKind,
  type TableName,
  tableOfKind,
} from './map-document.ts';
import { type Patch, patchOf } from './patch.ts';
import { mapDetailsSchema, schemaOfKind } from './records.ts';
import { referencesOf } from './references.ts';

/** A map being edited inside one command: later steps see what earlier ones did. */
export interface MapDraft {
  /** The map as it now stands; read it afresh after each step. */
  readonly map: MapDocument;
  /** Adds the record, or puts it in the place of the one with its id. */
  put(record: MapRecord): void;
  /** Takes a record out; taking out what is not there is a bug of ours. */
  drop(id: string): void;
  /** A new id that no record of the map has yet. */
  freshId<K extends TableKind>(kind: K, chance: Chance): Id<K>;
  /**
   * What was done, as one patch. Refuses (`bad-field`, path starting with the record's id) a record that
   * a file could not hold, so that no edit can make a map that cannot be read back, and
   * (`missing-reference`) a record that newly names one that is not there.
   */
  finish(): Result<Patch>;
}

/** The record with its fields in the order of its schema, or what is wrong with it. */
function checkedRecord(map: MapDocument, before: MapRecord | null, record: MapRecord): Result<MapRecord> {
  const schema =
    record.id === 'details:map' ? mapDetailsSchema : schemaOfKind[idKind(record.id) as TableKind];
  const checked = schema.safeParse(record);
  if (!checked.success) return fail(fieldProblem(checked.error, record.id));
  const known = new Set(before ? referencesOf(before).map((each) => each.id) : []);
  for (const { field, id } of referencesOf(record)) {
    if (known.has(id) || recordOf(map, id)) continue;
    return fail({ code: 'missing-reference', thing: record.id, field, missing: id });
  }
  return ok(before ? keepingFields(before, record, checked.data) : checked.data);
}

/** Checking copies lists; what an edit left alone stays the same list, so that all worked out from it stays known. */
function keepingFields(before: MapRecord, record: MapRecord, checked: MapRecord): MapRecord {
  const fields = Object.entries(checked).map(([field, value]) => {
    const left = before[field as keyof MapRecord];
    return [field, record[field as keyof MapRecord] === left ? left : value];
  });
  return Object.fromEntries(fields);
}

/**
 * Begins an edit of a map. The map itself never changes, and its tables are not copied.
 * @example
 * draftOf(sample.map).finish().value // => { added: [], removed: [], changed: [] }
 */
export function draftOf(start: MapDocument): MapDraft {
  let map: MapDocument = start;
  const layered = new Map<TableName, LayeredTable<string, MapRecord>>();
  const touched = new Map<string, MapRecord | null>();

  const tableFor = (id: string): LayeredTable<string, MapRecord> => {
    const name = tableOfKind[idKind(id) as TableKind];
    assert(name, `no table holds ${id}`);
    let table = layered.get(name);
    if (!table) {
      table = new LayeredTable(start[name] as ReadonlyMap<string, MapRecord>);
      layered.set(name, table);
      map = { ...map, [name]: table };
    }
    return table;
  };
  const note = (id: string, before: MapRecord | undefined): void => {
    if (!touched.has(id)) touched.set(id, before ?? null);
  };

  return {
    get map() {
      return map;
    },
    put(record) {
      if (record.id === 'details:map') {
        note(record.id, map.details);
        map = { ...map, details: record };
        return;
      }
      const table = tableFor(record.id);
      note(record.id, table.get(record.id));
      table.set(record.id, record);
    },
    drop(id) {
      const table = tableFor(id);
      const before = table.get(id);
      assert(before, `${id} is not there to drop`);
      note(id, before);
      table.delete(id);
    },
    freshId(kind, chance) {
      for (let tries = 0; tries < 1_000; tries++) {
        const id = newId(kind, chance);
        if (!recordOf(map, id)) return id;
      }
      assert(false, `no free ${kind} id in a thousand tries`);
    },
    finish() {
      const added: MapRecord[] = [];
      const removed: MapRecord[] = [];
      const changed: (readonly [MapRecord, MapRecord])[] = [];
      for (const [id, before] of touched) {
        const after = recordOf(map, id);
        if (after === before) continue;
        if (!after) {
          if (before) removed.push(before);
          continue;
        }
        const checked = checkedRecord(map, before, after);
        if (!checked.ok) return checked;
        if (before) changed.push([before, checked.value]);
        else added.push(checked.value);
      }
      return ok(patchOf({ added, removed, changed }));
    },
  };
}

/**
 * The record an id names, whatever its kind; null where there is none.
 * @example
 * recordOf(sample.map, 'panel:seat') === sample.seat // => true
 */
export function recordOf(map: MapDocument, id: string): MapRecord | null {
  if (id === map.details.id) return map.details;
  const kind: string = idKind(id);
  if (!Object.hasOwn(tableOfKind, kind)) return null;
  const name = tableOfKind[kind as TableKind];
  return (map[name] as ReadonlyMap<string, MapRecord>).get(id) ?? null;
}
