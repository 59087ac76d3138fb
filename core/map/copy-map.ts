import type { Chance } from '../quantity/chance.ts';
import { type IdKind, idKind, type MapId, newId } from '../quantity/id.ts';
import type { MapDocument, MapRecord } from './map-document.ts';
import { renamedRecord } from './renamed-record.ts';

/**
 * A copy of a map under a new id and name, at revision 0. With `freshIds`, every record gets a new id and
 * everything that names it follows, so that parts of both maps can live side by side. O(records).
 * @example
 * copyMap(sample.map, { id: 'map:copy', name: 'Copy' }).details.name // => 'Copy'
 */
export function copyMap(
  map: MapDocument,
  input: { readonly id: MapId; readonly name: string; readonly freshIds?: Chance },
): MapDocument {
  const copy: MapDocument = {
    ...map,
    id: input.id,
    revision: 0,
    details: { ...map.details, name: input.name },
  };
  return input.freshIds ? withFreshIds(copy, input.freshIds) : copy;
}

function withFreshIds(map: MapDocument, chance: Chance): MapDocument {
  const known = new Map<string, string>();
  const taken = new Set<string>();
  const fresh = <T extends string>(id: T): T => {
    let given = known.get(id);
    if (given === undefined) {
      do given = newId(idKind(id) as IdKind, chance);
      while (taken.has(given));
      known.set(id, given);
      taken.add(given);
    }
    return given as T;
  };
  const table = <K extends string, T extends MapRecord & { readonly id: K }>(
    records: ReadonlyMap<K, T>,
  ): Map<K, T> =>
    new Map(
      [...records.values()].map((record) => {
        const renamed = renamedRecord(record, fresh);
        return [renamed.id, renamed];
      }),
    );
  return {
    ...map,
    outlines: table(map.outlines),
    underlays: table(map.underlays),
    nodes: table(map.nodes),
    segments: table(map.segments),
    panels: table(map.panels),
    rubSpots: table(map.rubSpots),
    circuits: table(map.circuits),
  };
}
