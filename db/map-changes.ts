import type { Patch } from '#core/map/patch.ts';
import type { MapId } from '#core/quantity/id.ts';
import { idKind } from '#core/quantity/id.ts';
import { fail, ok, type Result } from '#core/quantity/result.ts';
import { type Connection, statement } from './connection.ts';
import { insertRecord } from './map-store.ts';

/** Kinds of record the small picture in the list is drawn from. */
const pictured = new Set<string>(['outline', 'node', 'segment']);

/**
 * Writes a patch onto the kept records, in the order `applyPatch` uses, and refuses what it refuses
 * (`patch-conflict`). Runs inside the caller's transaction.
 */
export function writePatch(connection: Connection, mapId: MapId, patch: Patch): Result<null> {
  const remove = statement(connection, 'DELETE FROM map_record WHERE map_id = ? AND record_id = ?');
  const change = statement(
    connection,
    'UPDATE map_record SET body = ? WHERE map_id = ? AND record_id = ? AND body = ?',
  );
  for (const record of patch.removed) {
    if (remove.run(mapId, record.id).changes !== 1) return fail({ code: 'patch-conflict', thing: record.id });
  }
  for (const record of patch.added) {
    if (!insertRecord(connection, mapId, record)) return fail({ code: 'patch-conflict', thing: record.id });
  }
  for (const [before, after] of patch.changed) {
    const { changes } = change.run(JSON.stringify(after), mapId, after.id, JSON.stringify(before));
    if (changes !== 1) return fail({ code: 'patch-conflict', thing: after.id });
    if (after.id === 'details:map') {
      statement(connection, 'UPDATE map SET name = ?, body_style = ?, drive_side = ? WHERE id = ?').run(
        after.name,
        after.bodyStyle,
        after.driveSide,
        mapId,
      );
    }
  }
  if (touchesPicture(patch)) statement(connection, 'UPDATE map SET picture = NULL WHERE id = ?').run(mapId);
  return ok(null);
}

function touchesPicture(patch: Patch): boolean {
  const touched = [...patch.added, ...patch.removed, ...patch.changed.map(([, after]) => after)];
  return touched.some((record) => pictured.has(idKind(record.id)));
}
