import type { MapExchange } from '#core/map/exchange.ts';
import { mapFormat, mapVersion } from '#core/map/exchange.ts';
import { type MapRecord, type TableKind, tableOfKind } from '#core/map/map-document.ts';
import type { MapDetails } from '#core/map/records.ts';
import { assert } from '#core/quantity/assert.ts';
import type { MapId } from '#core/quantity/id.ts';
import { idKind } from '#core/quantity/id.ts';
import { fail, ok, type Result } from '#core/quantity/result.ts';
import { type Connection, statement } from './connection.ts';
import { inOneTransaction } from './in-one-transaction.ts';

/** The record lists of a map document, by the word before the colon in their ids. */
const kinds = Object.keys(tableOfKind) as TableKind[];

const recordsOf = (map: MapExchange): MapRecord[] => [
  map.details,
  ...kinds.flatMap((kind): readonly MapRecord[] => map[tableOfKind[kind]]),
];

/** Keeps a whole new map. `duplicate-id` when its id is here already. */
export function addMap(connection: Connection, map: MapExchange, now: string): Result<MapId> {
  return inOneTransaction(connection, () => {
    if (mapRevision(connection, map.id) !== null) return fail({ code: 'duplicate-id', thing: map.id });
    const { name, bodyStyle, driveSide } = map.details;
    statement(
      connection,
      `INSERT INTO map (id, name, body_style, drive_side, first_revision, revision, changed_at)
       VALUES (?, ?, ?, ?, ?, ?, ?)`,
    ).run(map.id, name, bodyStyle, driveSide, map.revision, map.revision, now);
    for (const record of recordsOf(map)) {
      if (!insertRecord(connection, map.id, record)) return fail({ code: 'duplicate-id', thing: record.id });
    }
    return ok(map.id);
  });
}

/** The map as it is now; null when there is none. Its lists are sorted by id. */
export function readMap(connection: Connection, mapId: MapId): MapExchange | null {
  const revision = mapRevision(connection, mapId);
  if (revision === null) return null;
  const rows = statement<{ kind: string; bodies: string }>(
    connection,
    `SELECT kind, '[' || group_concat(body, ',' ORDER BY record_id) || ']' AS bodies
     FROM map_record WHERE map_id = ? GROUP BY kind`,
  ).all(mapId);
  const lists = new Map(rows.map((row) => [row.kind, JSON.parse(row.bodies) as MapRecord[]]));
  const details = lists.get('details')?.[0] as MapDetails | undefined;
  assert(details, `${mapId} has no details record`);
  const tables = Object.fromEntries(kinds.map((kind) => [tableOfKind[kind], lists.get(kind) ?? []]));
  return { format: mapFormat, version: mapVersion, id: mapId, revision, details, ...tables } as MapExchange;
}

/** The revision a map stands at; null when there is no such map. */
export function mapRevision(connection: Connection, mapId: MapId): number | null {
  const sql = 'SELECT revision FROM map WHERE id = ?';
  return statement<{ revision: number }>(connection, sql).get(mapId)?.revision ?? null;
}

/** Forgets a map and its undo history. Jobs keep the map as it stood when they were opened. */
export function removeMap(connection: Connection, mapId: MapId): Result<MapId> {
  const { changes } = statement(connection, 'DELETE FROM map WHERE id = ?').run(mapId);
  return changes === 1 ? ok(mapId) : fail({ code: 'not-found', thing: mapId });
}

/** Adds one record; false when its id is taken. */
export function insertRecord(connection: Connection, mapId: MapId, record: MapRecord): boolean {
  const sql = `INSERT INTO map_record (map_id, record_id, kind, body) VALUES (?, ?, ?, ?)
    ON CONFLICT (map_id, record_id) DO NOTHING`;
  const { changes } = statement(connection, sql).run(
    mapId,
    record.id,
    idKind(record.id),
    JSON.stringify(record),
  );
  return changes === 1;
}
