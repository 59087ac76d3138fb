import type { Result } from '#core/quantity/result.ts';
import type { Connection } from './connection.ts';

/**
 * Does all of the work in one immediate SQL transaction, or none of it: a refused result and a throw
 * both roll back. Immediate, so that two writers meet at the start and not half-way. Inside another one
 * it is a part of that, and rolls back by itself or with the whole.
 */
export function inOneTransaction<T>(connection: Connection, work: () => Result<T>): Result<T> {
  return turned(connection, work, (result) => result.ok);
}

/**
 * Does the work as `inOneTransaction` does and gives its answer, but takes it back in any case: what
 * would happen, without a second way of working it out.
 */
export function rehearsed<T>(connection: Connection, work: () => Result<T>): Result<T> {
  return turned(connection, work, () => false);
}

function turned<T>(
  connection: Connection,
  work: () => Result<T>,
  keeps: (result: Result<T>) => boolean,
): Result<T> {
  const inner = connection.inTransaction;
  connection.exec(inner ? 'SAVEPOINT part' : 'BEGIN IMMEDIATE');
  const back = inner ? 'ROLLBACK TO part; RELEASE part' : 'ROLLBACK';
  let open = true;
  try {
    const result = work();
    connection.exec(keeps(result) ? (inner ? 'RELEASE part' : 'COMMIT') : back);
    open = false;
    return result;
  } finally {
    // SQLite rolls back by itself when the disk is full; asking again would hide the first error.
    if (open && connection.inTransaction) connection.exec(back);
  }
}
