import { type ComparedThing, compareMaps } from '#core/map/compare-maps.ts';
import { type MapExchange, mapFromExchange } from '#core/map/exchange.ts';
import { isEmptyPatch } from '#core/map/patch.ts';
import { patchBetween } from '#core/map/patch-between.ts';
import type { MapId } from '#core/quantity/id.ts';
import type { Result } from '#core/quantity/result.ts';
import { commitTransaction, readHistory } from '#db/map-history-store.ts';
import { readMap } from '#db/map-store.ts';
import type { MapDifference } from '../contract/contract.ts';
import type { HostMeans } from './host-means.ts';

/** More things than these are only counted. */
const mostNamed = 40;

/** How a file's map differs from the one kept under its id; null where none is, `same` where they say the same. */
export function otherState({ connection }: HostMeans, map: MapExchange): MapDifference | 'same' | null {
  const ours = readMap(connection, map.id);
  if (!ours) return null;
  const [before, after] = [mapFromExchange(ours), mapFromExchange(map)];
  if (isEmptyPatch(patchBetween(before, after))) return 'same';
  const { added, moved, changed, removed } = compareMaps(before, after);
  const fields = new Map(changed.map((thing) => [thing.id, [...thing.fields]]));
  const told = (how: MapDifference['things'][number]['how'], things: readonly ComparedThing[]) =>
    things.map(({ id, kind, name }) => ({
      how,
      kind,
      name,
      fields: how === 'changed' ? (fields.get(id) ?? []) : [],
    }));
  const things = [
    ...told('added', added),
    ...told('removed', removed),
    ...told('moved', moved),
    ...told('changed', changed),
  ];
  return {
    added: added.length,
    moved: moved.length,
    changed: changed.length,
    removed: removed.length,
    things: things.slice(0, mostNamed),
    oursEdited: readHistory(connection, map.id).done.some(({ origin }) => origin !== 'import'),
  };
}

/** Makes the kept map what the file's map is, as one edit that can be undone; nothing else of it changes. */
export function takeTheirs({ connection, now }: HostMeans, map: MapExchange): Result<MapId> {
  const ours = readMap(connection, map.id);
  if (!ours) return { ok: false, problem: { code: 'not-found', thing: map.id } };
  const patch = patchBetween(mapFromExchange(ours), mapFromExchange(map));
  const transaction = {
    label: 'edit.takeTheirs',
    origin: 'import',
    patch,
    selectionBefore: [],
    selectionAfter: [],
  } as const;
  const kept = commitTransaction(connection, map.id, ours.revision, transaction, now());
  return kept.ok ? { ok: true, value: map.id } : kept;
}
