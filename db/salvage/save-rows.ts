import type { Connection } from '../connection.ts';
import { keptTables } from './kept-tables.ts';
import { type Row, readRows } from './read-rows.ts';

/** Rows of a source that were read and sound went in; these tables had some that were not. */
export interface SavedRows {
  readonly troubled: ReadonlySet<string>;
}

/**
 * Puts every sound row that can be read from a store, of this version or an older one, into a new store of
 * this version; `wanted` narrows it down by table, and leaves out those it does not name. Rows that are there already stay.
 */
export function saveRows(
  source: Connection,
  target: Connection,
  wanted: Readonly<Record<string, (row: Row) => boolean>> | null = null,
): SavedRows {
  const troubled = new Set<string>();
  for (const table of keptTables) {
    const isWanted = wanted === null ? () => true : wanted[table.name];
    if (!isWanted) continue;
    const known = columnsOf(source, table.name);
    const columns = columnsOf(target, table.name).filter(
      (column) => known.includes(column) && !table.derived.includes(column),
    );
    if (columns.length === 0) {
      troubled.add(table.name);
      continue;
    }
    const insert = target.prepare(
      `INSERT OR IGNORE INTO ${table.name} (${columns.join(', ')}) VALUES (${columns.map(() => '?').join(', ')})`,
    );
    target.exec('BEGIN');
    const whole = readRows(source, table.name, columns, table.withRowid, (row) => {
      if (!isWanted(row)) return;
      if (!table.isSound(row) || !fits(() => insert.run(...columns.map((column) => row[column])))) {
        troubled.add(table.name);
      }
    });
    target.exec('COMMIT');
    if (!whole) troubled.add(table.name);
  }
  return { troubled };
}

/** Whether the new store takes a row; one whose values are not of the table's kind it does not. */
function fits(work: () => unknown): boolean {
  try {
    work();
    return true;
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : '';
    if (/^SQLITE_(CONSTRAINT|MISMATCH)/.test(code)) return false;
    throw error;
  }
}

function columnsOf(connection: Connection, table: string): string[] {
  try {
    return (connection.pragma(`table_info(${table})`) as { name: string }[]).map(({ name }) => name);
  } catch {
    return [];
  }
}
