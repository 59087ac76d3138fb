import type { BodyStyle, DriveSide } from '#core/map/kinds.ts';
import { assert } from '#core/quantity/assert.ts';
import type { MapId } from '#core/quantity/id.ts';
import { ok } from '#core/quantity/result.ts';
import { type Connection, statement } from './connection.ts';
import { inOneTransaction } from './in-one-transaction.ts';
import { readMap } from './map-store.ts';
import { type SmallPicture, smallPicture } from './small-picture.ts';

/** One line of the map list. */
export interface MapLine {
  readonly id: MapId;
  readonly revision: number;
  readonly name: string;
  readonly bodyStyle: BodyStyle;
  readonly driveSide: DriveSide;
  readonly changedAt: string;
  readonly jobCount: number;
  readonly findCount: number;
  readonly picture: SmallPicture;
}

type MapLineRow = Omit<MapLine, 'picture'> & { readonly picture: string | null };

/**
 * Every map, last changed first. A picture is drawn when the list is next asked for, not at each edit,
 * and kept until the drawing changes.
 */
export function listMaps(connection: Connection): MapLine[] {
  const rows = statement<MapLineRow>(
    connection,
    `SELECT map.id, map.revision, map.name, map.body_style AS bodyStyle, map.drive_side AS driveSide,
       map.changed_at AS changedAt, map.picture,
       coalesce(past.jobs, 0) AS jobCount, coalesce(past.finds, 0) AS findCount
     FROM map
     LEFT JOIN (SELECT map_id, count(*) AS jobs, sum(find_count) AS finds FROM job GROUP BY map_id) AS past
       ON past.map_id = map.id
     ORDER BY map.changed_at DESC, map.id`,
  ).all();
  const lines = (): MapLine[] =>
    rows.map((row) => ({
      ...row,
      picture: row.picture === null ? drawPicture(connection, row.id) : JSON.parse(row.picture),
    }));
  if (rows.every(({ picture }) => picture !== null)) return lines();
  // In one transaction: thousands by themselves would wait for the disk each.
  let drawn: MapLine[] = [];
  inOneTransaction(connection, () => {
    drawn = lines();
    return ok(drawn.length);
  });
  return drawn;
}

function drawPicture(connection: Connection, mapId: MapId): SmallPicture {
  const map = readMap(connection, mapId);
  assert(map, `${mapId} is in the list but not in the store`);
  const picture = smallPicture(map);
  statement(connection, 'UPDATE map SET picture = ? WHERE id = ? AND revision = ?').run(
    JSON.stringify(picture),
    mapId,
    map.revision,
  );
  return picture;
}
