import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { fail, ok, type Result } from '#core/quantity/result.ts';
import { isAsClosed } from './closed-store.ts';
import type { Connection } from './connection.ts';
import { countFindsAnew } from './job-store.ts';
import { migrate } from './migrate.ts';
import { storeProblem } from './store-problem.ts';

/** How long a statement waits for another connection before it gives `store-busy`. */
const busyMs = 2_000;
/** The tables every start reads. They are small, however many jobs and pictures there are. */
const looksInside = ['map', 'map_snapshot', 'place_state'].map((table) => `quick_check(${table})`);

/**
 * Opens the store in a file, made when missing, checked and lifted to the newest version. A file that is just as
 * `closeStore` left it is only looked into; any other is read from end to end. Every commit is on the disk
 * when it returns (write-ahead log with full synchronisation). Problems: `store-damaged`, `store-newer`,
 * `store-read-only`, `store-full`, `store-busy`.
 */
export function openStore(file: string): Result<Connection> {
  let connection: Connection | undefined;
  try {
    mkdirSync(dirname(file), { recursive: true });
    const asClosed = isAsClosed(file);
    connection = new Database(file);
    const refused = prepare(connection, file, asClosed);
    if (refused.ok) return ok(connection);
    connection.close();
    return refused;
  } catch (error) {
    connection?.close();
    const problem = storeProblem(error);
    if (!problem) throw error;
    return fail(problem);
  }
}

function prepare(connection: Connection, file: string, asClosed: boolean): Result<number> {
  connection.pragma(`busy_timeout = ${busyMs}`);
  connection.pragma('trusted_schema = OFF');
  for (const check of asClosed ? looksInside : ['integrity_check(1)']) {
    const said = connection.pragma(check, { simple: true }) as string;
    if (said !== 'ok') return fail({ code: 'store-damaged', detail: said });
  }
  connection.pragma('journal_mode = WAL');
  connection.pragma('synchronous = FULL');
  connection.pragma('foreign_keys = ON');
  const lifted = migrate(connection, file);
  if (lifted.ok) countFindsAnew(connection);
  return lifted;
}
