import { copyMap } from '#core/map/copy-map.ts';
import { type MapExchange, mapExchangeSchema, mapFromExchange, mapToExchange } from '#core/map/exchange.ts';
import { emptyMap, type MapDocument, tableOfKind } from '#core/map/map-document.ts';
import { mirrorMap } from '#core/map/mirror-map.ts';
import { sidesRenamed } from '#core/map/sides-renamed.ts';
import { newId } from '#core/quantity/id.ts';
import { fail, ok, type Result } from '#core/quantity/result.ts';
import { commitTransaction, readHistory, readMapAt } from '#db/map-history-store.ts';
import { listRevisions } from '#db/map-revision-store.ts';
import { readPinnedMap } from '#db/map-snapshot-store.ts';
import { addMap, readMap, removeMap } from '#db/map-store.ts';
import type { Handlers } from '../contract/handlers.ts';
import type { HostMeans } from './host-means.ts';

type MapHandlers = Pick<
  Handlers,
  'map.create' | 'map.open' | 'map.revisions' | 'map.commit' | 'map.copy' | 'map.remove'
>;

/** The requests about vehicle maps. */
export function mapHandlers({ connection, now, chance }: HostMeans): MapHandlers {
  return {
    'map.create': ({ name, bodyStyle, driveSide }) => {
      const map = mapToExchange(emptyMap(newId('map', chance), name, bodyStyle, driveSide));
      return withMapId(addMap(connection, map, now()));
    },

    'map.open': ({ mapId, revision }) => {
      if (revision === undefined) {
        const map = readMap(connection, mapId);
        if (!map) return fail({ code: 'not-found', thing: mapId });
        return ok({ map, history: readHistory(connection, mapId) });
      }
      const pinned = readPinnedMap(connection, mapId, revision);
      const map: Result<MapExchange> = pinned ? ok(pinned) : readMapAt(connection, mapId, revision);
      return map.ok ? ok({ map: map.value, history: { done: [], undone: [] } }) : map;
    },

    'map.revisions': ({ mapId }) => {
      const listed = listRevisions(connection, mapId);
      return listed.ok ? ok({ revisions: listed.value }) : listed;
    },

    'map.commit': ({ mapId, expectedRevision, transaction, joins }) => {
      const kept = commitTransaction(connection, mapId, expectedRevision, transaction, now(), joins);
      return kept.ok ? ok({ revision: kept.value }) : kept;
    },

    'map.copy': ({ mapId, name, mirrored, mirrorIds }) => {
      const kept = readMap(connection, mapId);
      if (!kept) return fail({ code: 'not-found', thing: mapId });
      const source = mapFromExchange(kept);
      const id = newId('map', chance);
      const ticked = mirrorIds ?? recordIds(source);
      const turned = mirrored ? sidesRenamed(mirrorMap(source, { id, ticked }).map, ticked) : source;
      // Through the schema, so that the copy is kept in the same normal form as what comes from outside.
      const copy = mapExchangeSchema.parse(mapToExchange(copyMap(turned, { id, name })));
      return withMapId(addMap(connection, copy, now()));
    },

    'map.remove': ({ mapId }) => {
      const removed = removeMap(connection, mapId);
      return removed.ok ? ok({}) : removed;
    },
  };
}

const withMapId = <T>(result: Result<T>): Result<{ mapId: T }> =>
  result.ok ? ok({ mapId: result.value }) : result;

const recordIds = (map: MapDocument): string[] =>
  Object.values(tableOfKind).flatMap((table): string[] => [...map[table].keys()]);
