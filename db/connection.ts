import type Database from 'better-sqlite3';

/** One open SQLite connection. Only db/ runs statements on it; hosts hand it on. */
export type Connection = Database.Database;

const prepared = new WeakMap<Connection, Map<string, Database.Statement<unknown[], unknown>>>();

/** The prepared statement of a text, prepared once for each connection. */
export function statement<Row = unknown>(
  connection: Connection,
  sql: string,
): Database.Statement<unknown[], Row> {
  let known = prepared.get(connection);
  if (!known) {
    known = new Map();
    prepared.set(connection, known);
  }
  let found = known.get(sql);
  if (!found) {
    found = connection.prepare<unknown[], unknown>(sql);
    known.set(sql, found);
  }
  return found as Database.Statement<unknown[], Row>;
}
