import type { Connection } from '../connection.ts';

export type Row = Readonly<Record<string, unknown>>;

/** A page holds some hundred rows at most; after so many numbers without one, no more are looked for. */
const mostMisses = 5_000;

/**
 * Hands over every row of a table that can still be read, some perhaps twice; false when some could not.
 * A damaged page hides its rows and stops a walk: so the table is walked from both ends, and where rows have
 * numbers those in between are tried one by one.
 */
export function readRows(
  connection: Connection,
  table: string,
  columns: readonly string[],
  withRowid: boolean,
  each: (row: Row) => void,
): boolean {
  const list = columns.join(', ');
  if (!withRowid) {
    const walk = (order: string): boolean =>
      walked(connection, `SELECT ${list} FROM ${table} ORDER BY ${order}`, [], each);
    if (walk('1, 2')) return true;
    walk('1 DESC, 2 DESC');
    return false;
  }
  const sql = `SELECT rowid AS "row number", ${list} FROM ${table}`;
  let last = -1;
  const note = (row: Row): void => {
    last = row['row number'] as number;
    each(row);
  };
  if (walked(connection, `${sql} ORDER BY rowid`, [], note)) return true;
  const before = last;
  let after = Number.POSITIVE_INFINITY;
  walked(connection, `${sql} WHERE rowid > ? ORDER BY rowid DESC`, [before], (row) => {
    after = row['row number'] as number;
    each(row);
  });
  tryBetween(connection, `${sql} WHERE rowid = ?`, before, after, each);
  return false;
}

/** Walks one query as far as it goes; false when a row could not be read. */
function walked(
  connection: Connection,
  sql: string,
  values: readonly unknown[],
  each: (row: Row) => void,
): boolean {
  try {
    for (const row of connection.prepare(sql).iterate(...values) as Iterable<Row>) each(row);
    return true;
  } catch (error) {
    if (error instanceof Error && 'code' in error && String(error.code).startsWith('SQLITE_')) return false;
    throw error;
  }
}

/** Tries row by row, by number, between two ends. */
function tryBetween(
  connection: Connection,
  sql: string,
  before: number,
  after: number,
  each: (row: Row) => void,
): void {
  let read: { get(rowid: number): unknown };
  try {
    read = connection.prepare(sql);
  } catch {
    return;
  }
  let misses = 0;
  for (let rowid = before + 1; rowid < after && misses < mostMisses; rowid++) {
    misses++;
    let row: Row | undefined;
    try {
      row = read.get(rowid) as Row | undefined;
    } catch {
      continue;
    }
    if (!row) continue;
    misses = 0;
    each(row);
  }
}
