import type { Result } from '#core/quantity/result.ts';
import type { Connection } from './connection.ts';

/**
 * Does all of the work in one immediate SQL transaction, or none of it: a refused result and a throw
 * both roll back. Immediate, so that two writers meet at the start and not half-way.
 */
export function inOneTransaction<T>(connection: Connection, work: () => Result<T>): Result<T> {
  connection.exec('BEGIN IMMEDIATE');
  try {
    const result = work();
    connection.exec(result.ok ? 'COMMIT' : 'ROLLBACK');
    return result;
  } finally {
    // SQLite rolls back by itself when the disk is full; asking again would hide the first error.
    if (connection.inTransaction) connection.exec('ROLLBACK');
  }
}
