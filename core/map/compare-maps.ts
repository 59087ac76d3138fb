import { bodyDistanceMm } from '../geometry/point.ts';
import { compareText } from '../quantity/compare-text.ts';
import { type IdKind, idKind } from '../quantity/id.ts';
import { type MapDocument, type MapRecord, type TableKind, tableOfKind } from './map-document.ts';
import type { MapNode } from './records.ts';
import { sameValue } from './same-value.ts';

/** Something that is on one of two maps or differs between them. */
export interface ComparedThing {
  readonly id: string;
  readonly kind: IdKind | 'details';
  /** Its name on the later map, or on the earlier one when it is gone; empty where it has none. */
  readonly name: string;
}

export interface MovedThing extends ComparedThing {
  /** How far, height included, where it is one point; null for shapes. */
  readonly byMm: number | null;
}

export interface ChangedThing extends ComparedThing {
  /** Names of the fields that differ, place left out, in the order of the letters. */
  readonly fields: readonly string[];
}

/** What happened between two states of a map, each list by kind and then by id. */
export interface MapComparison {
  readonly added: readonly ComparedThing[];
  readonly removed: readonly ComparedThing[];
  /** A thing that moved and changed otherwise too stands in both lists. */
  readonly moved: readonly MovedThing[];
  readonly changed: readonly ChangedThing[];
}

/** The fields that say where a thing is. */
const placeFields: Readonly<Record<TableKind, readonly string[]>> = {
  outline: ['vertices'],
  underlay: ['origin', 'mmPerPx', 'turnRad'],
  node: ['at'],
  segment: ['bends'],
  panel: ['area'],
  'rub-spot': ['points'],
  circuit: [],
};

/**
 * What was added, removed, moved and changed from one state of a map to another, by record id. A run whose
 * node moved is only named when something of its own differs, such as the station of a clip. O(records).
 * @example
 * compareMaps(sample.map, { ...sample.map, panels: new Map() }).removed.map((thing) => thing.id) // => ['panel:seat', 'panel:tread']
 */
export function compareMaps(before: MapDocument, after: MapDocument): MapComparison {
  const added: ComparedThing[] = [];
  const removed: ComparedThing[] = [];
  const moved: MovedThing[] = [];
  const changed: ChangedThing[] = [];
  const compare = (was: MapRecord, is: MapRecord): void => {
    if (was === is) return;
    const fields = differingFields(was, is);
    const place = is.id === 'details:map' ? [] : placeFields[idKind(is.id) as TableKind];
    if (fields.some((field) => place.includes(field))) {
      moved.push({ ...named(is), byMm: distanceMm(was, is) });
    }
    const others = fields.filter((field) => !place.includes(field));
    if (others.length > 0) changed.push({ ...named(is), fields: others });
  };
  compare(before.details, after.details);
  for (const table of Object.values(tableOfKind)) {
    const was = before[table] as ReadonlyMap<string, MapRecord>;
    const is = after[table] as ReadonlyMap<string, MapRecord>;
    for (const [id, record] of was) {
      const other = is.get(id);
      if (other) compare(record, other);
      else removed.push(named(record));
    }
    for (const [id, record] of is) if (!was.has(id)) added.push(named(record));
  }
  const inOrder = <T extends ComparedThing>(things: T[]): T[] =>
    things.sort((a, b) => compareText(a.kind, b.kind) || compareText(a.id, b.id));
  return {
    added: inOrder(added),
    removed: inOrder(removed),
    moved: inOrder(moved),
    changed: inOrder(changed),
  };
}

const named = (record: MapRecord): ComparedThing => ({
  id: record.id,
  kind: record.id === 'details:map' ? 'details' : idKind(record.id),
  name: record.name,
});

function differingFields(was: MapRecord, is: MapRecord): string[] {
  const a = was as unknown as Readonly<Record<string, unknown>>;
  const b = is as unknown as Readonly<Record<string, unknown>>;
  const fields = Object.keys(a).filter((field) => !sameValue(a[field], b[field]));
  for (const field of Object.keys(b)) if (!(field in a) && b[field] !== undefined) fields.push(field);
  return fields.sort(compareText);
}

function distanceMm(was: MapRecord, is: MapRecord): number | null {
  return idKind(is.id) === 'node' ? bodyDistanceMm((was as MapNode).at, (is as MapNode).at) : null;
}
