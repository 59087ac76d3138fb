import { isDeepStrictEqual } from 'node:util';
import { type MapExchange, mapFromExchange, mapToExchange } from '#core/map/exchange.ts';
import { applyPatch, invertPatch, type Patch, squashPatches } from '#core/map/patch.ts';
import type { Selection, Transaction } from '#core/map/transaction.ts';
import { assert } from '#core/quantity/assert.ts';
import type { MapId } from '#core/quantity/id.ts';
import { fail, ok, type Result } from '#core/quantity/result.ts';
import { type Connection, statement } from './connection.ts';
import { inOneTransaction } from './in-one-transaction.ts';
import { writePatch } from './map-changes.ts';
import { mapRevision, readMap } from './map-store.ts';
import { packJson, unpackJson } from './packed-json.ts';

/** Undo history in the order the edits were made: undo takes the last done, redo the first undone. */
export interface MapHistory {
  readonly done: Transaction[];
  readonly undone: Transaction[];
}

interface EditRow {
  readonly revision: number;
  readonly label: string;
  readonly origin: 'user' | 'import';
  readonly patch: Buffer;
  readonly selections: string;
  readonly state: 'done' | 'undone';
}

/**
 * Keeps one transaction on top of the expected revision and gives the new revision. An edit drops what
 * was undone before it; `undo` must carry the inverse of the newest edit that is done, and `redo` the
 * patch of the edit undone last. With `joins` the edit becomes one with the edit that led to the expected
 * revision, which is then no state of its own any more. Problems: `not-found`, `stale-revision`,
 * `patch-conflict`.
 */
export function commitTransaction(
  connection: Connection,
  mapId: MapId,
  expectedRevision: number,
  transaction: Transaction,
  now: string,
  joins = false,
): Result<number> {
  return inOneTransaction(connection, () => {
    const found = mapRevision(connection, mapId);
    if (found === null) return fail({ code: 'not-found', thing: mapId });
    if (found !== expectedRevision) {
      return fail({ code: 'stale-revision', expected: expectedRevision, found });
    }
    const revision = found + 1;
    const written = writePatch(connection, mapId, transaction.patch);
    if (!written.ok) return written;
    const note =
      transaction.origin === 'undo' || transaction.origin === 'redo'
        ? noteTurn
        : joins
          ? noteJoined
          : noteEdit;
    const noted = note(connection, mapId, revision, transaction, now);
    if (!noted.ok) return noted;
    statement(connection, 'UPDATE map SET revision = ?, changed_at = ? WHERE id = ?').run(
      revision,
      now,
      mapId,
    );
    return ok(revision);
  });
}

function noteEdit(
  connection: Connection,
  mapId: MapId,
  revision: number,
  transaction: Transaction,
  now: string,
): Result<null> {
  const drop = `UPDATE map_transaction SET state = 'dropped' WHERE map_id = ? AND state = 'undone'`;
  statement(connection, drop).run(mapId);
  const kept: Kept = { patch: packJson(transaction.patch), turnsRevision: null, state: 'done' };
  insertTransaction(connection, mapId, revision, transaction, now, kept);
  return ok(null);
}

/** Notes more of the newest edit, made since and never turned: one entry, at the newer revision. */
function noteJoined(
  connection: Connection,
  mapId: MapId,
  revision: number,
  transaction: Transaction,
  now: string,
): Result<null> {
  const newest = statement<EditRow>(
    connection,
    `SELECT * FROM map_transaction WHERE map_id = ? AND revision = ? AND state = 'done'`,
  ).get(mapId, revision - 1);
  if (!newest) return fail({ code: 'stale-revision', expected: revision - 1, found: revision - 1 });
  const { selectionBefore, patch } = transactionOf(newest);
  statement(
    connection,
    `UPDATE map_transaction SET revision = ?, patch = ?, selections = ?, changed_at = ?
     WHERE map_id = ? AND revision = ?`,
  ).run(
    revision,
    packJson(squashPatches(patch, transaction.patch)),
    JSON.stringify([selectionBefore, transaction.selectionAfter]),
    now,
    mapId,
    newest.revision,
  );
  return ok(null);
}

/** How a transaction is kept: an edit with its patch, a turn by the edit it turns. */
interface Kept {
  readonly patch: Buffer | null;
  readonly turnsRevision: number | null;
  readonly state: 'done' | 'turn';
}

function insertTransaction(
  connection: Connection,
  mapId: MapId,
  revision: number,
  transaction: Transaction,
  now: string,
  kept: Kept,
): void {
  statement(
    connection,
    `INSERT INTO map_transaction
       (map_id, revision, label, origin, turns_revision, patch, selections, state, changed_at)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)`,
  ).run(
    mapId,
    revision,
    transaction.label,
    transaction.origin,
    kept.turnsRevision,
    kept.patch,
    JSON.stringify([transaction.selectionBefore, transaction.selectionAfter]),
    kept.state,
    now,
  );
}

/** Notes an undo or a redo by naming the edit it turns: its patch is known from there. */
function noteTurn(
  connection: Connection,
  mapId: MapId,
  revision: number,
  transaction: Transaction,
  now: string,
): Result<null> {
  const undo = transaction.origin === 'undo';
  const turned = statement<EditRow>(
    connection,
    undo
      ? `SELECT * FROM map_transaction WHERE map_id = ? AND state = 'done' ORDER BY revision DESC LIMIT 1`
      : `SELECT * FROM map_transaction WHERE map_id = ? AND state = 'undone' ORDER BY revision LIMIT 1`,
  ).get(mapId);
  if (!turned) return fail({ code: 'not-found', thing: transaction.origin });
  const patch = unpackJson(turned.patch) as Patch;
  const asked = JSON.parse(JSON.stringify(transaction.patch)) as Patch;
  if (!samePatch(asked, undo ? invertPatch(patch) : patch)) {
    return fail({ code: 'patch-conflict', thing: mapId });
  }
  statement(connection, 'UPDATE map_transaction SET state = ? WHERE map_id = ? AND revision = ?').run(
    undo ? 'undone' : 'done',
    mapId,
    turned.revision,
  );
  const kept: Kept = { patch: null, turnsRevision: turned.revision, state: 'turn' };
  insertTransaction(connection, mapId, revision, transaction, now, kept);
  return ok(null);
}

/** Whether two patches hold the same records, in whatever order they list them. */
function samePatch(a: Patch, b: Patch): boolean {
  const byId = (patch: Patch): object => ({
    added: Object.fromEntries(patch.added.map((record) => [record.id, record])),
    removed: Object.fromEntries(patch.removed.map((record) => [record.id, record])),
    changed: Object.fromEntries(patch.changed.map((pair) => [pair[1].id, pair])),
  });
  return isDeepStrictEqual(byId(a), byId(b));
}

/** The whole undo history of a map, oldest edit first in both lists. */
export function readHistory(connection: Connection, mapId: MapId): MapHistory {
  const rows = statement<EditRow>(
    connection,
    `SELECT * FROM map_transaction WHERE map_id = ? AND state IN ('done', 'undone') ORDER BY revision`,
  ).all(mapId);
  const inState = (state: EditRow['state']): Transaction[] =>
    rows.filter((row) => row.state === state).map(transactionOf);
  return { done: inState('done'), undone: inState('undone') };
}

function transactionOf(row: EditRow): Transaction {
  const [selectionBefore, selectionAfter] = JSON.parse(row.selections) as [Selection, Selection];
  const patch = unpackJson(row.patch) as Patch;
  return { label: row.label, origin: row.origin, patch, selectionBefore, selectionAfter };
}

/**
 * The map as it stood at an earlier revision, found by taking the later changes back one by one.
 * `not-found` for a map that is not here, `stale-revision` for a revision it never had or that became one
 * with the next.
 */
export function readMapAt(connection: Connection, mapId: MapId, revision: number): Result<MapExchange> {
  const now = readMap(connection, mapId);
  if (!now) return fail({ code: 'not-found', thing: mapId });
  if (revision === now.revision) return ok(now);
  const first = statement<{ first: number }>(
    connection,
    'SELECT first_revision AS first FROM map WHERE id = ?',
  ).get(mapId);
  if (!first || revision < first.first || revision > now.revision) {
    return fail({ code: 'stale-revision', expected: revision, found: now.revision });
  }
  const led = statement<{ revision: number }>(
    connection,
    'SELECT revision FROM map_transaction WHERE map_id = ? AND revision = ?',
  ).get(mapId, revision);
  if (!led && revision !== first.first) {
    return fail({ code: 'stale-revision', expected: revision, found: now.revision });
  }
  const later = statement<{ origin: Transaction['origin']; packed: Buffer }>(
    connection,
    `SELECT made.origin, coalesce(made.patch, turned.patch) AS packed
     FROM map_transaction AS made LEFT JOIN map_transaction AS turned
       ON turned.map_id = made.map_id AND turned.revision = made.turns_revision
     WHERE made.map_id = ? AND made.revision > ? ORDER BY made.revision DESC`,
  ).all(mapId, revision);
  let map = mapFromExchange(now);
  for (const { origin, packed } of later) {
    const patch = unpackJson(packed) as Patch;
    const back = applyPatch(map, origin === 'undo' ? patch : invertPatch(patch));
    assert(back.ok, `the history of ${mapId} does not lead back to revision ${revision}`);
    map = back.value;
  }
  return ok(mapToExchange({ ...map, revision }));
}
