import type { MapExchange } from '#core/map/exchange.ts';
import type { MapId } from '#core/quantity/id.ts';
import { type Connection, statement } from './connection.ts';
import { packJson, unpackJson } from './packed-json.ts';

/** Pins a map as it stands, once for each revision, for the jobs opened on it. */
export function pinMap(connection: Connection, map: MapExchange): void {
  statement(
    connection,
    `INSERT INTO map_snapshot (map_id, revision, name, document) VALUES (?, ?, ?, ?)
     ON CONFLICT (map_id, revision) DO NOTHING`,
  ).run(map.id, map.revision, map.details.name, packJson(map));
}

/** The map as a job pinned it; null when no job did. */
export function readPinnedMap(connection: Connection, mapId: MapId, revision: number): MapExchange | null {
  const row = statement<{ document: Buffer }>(
    connection,
    'SELECT document FROM map_snapshot WHERE map_id = ? AND revision = ?',
  ).get(mapId, revision);
  return row ? (unpackJson(row.document) as MapExchange) : null;
}

/** Whether any job pinned a map of this id, be the map itself here or removed. */
export function hasPinnedMap(connection: Connection, mapId: MapId): boolean {
  return (
    statement(connection, 'SELECT 1 FROM map_snapshot WHERE map_id = ? LIMIT 1').get(mapId) !== undefined
  );
}
