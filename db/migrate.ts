import { existsSync } from 'node:fs';
import { assert } from '#core/quantity/assert.ts';
import { fail, ok, type Result } from '#core/quantity/result.ts';
import type { Connection } from './connection.ts';
import { type MigrationStep, migrationSteps } from './migrations/index.ts';

const versionOf = (connection: Connection): number =>
  connection.pragma('user_version', { simple: true }) as number;

/** A free file name beside the store for the copy made before lifting it. */
function backupFile(file: string, fromVersion: number): string {
  const stem = `${file}.before-lifting-version-${fromVersion}`;
  for (let n = 1; ; n++) {
    const name = n === 1 ? `${stem}.backup` : `${stem}-${n}.backup`;
    if (!existsSync(name)) return name;
  }
}

/**
 * Lifts a store to the newest version: all missing steps and the new version number in one immediate
 * transaction, after a copy of an existing store was put beside it. Gives the version it had.
 * `store-newer` for a store a newer program wrote, `store-damaged` for a database that is not ours.
 */
export function migrate(
  connection: Connection,
  file: string,
  steps: readonly MigrationStep[] = migrationSteps,
): Result<number> {
  const head = steps.at(-1)?.version ?? 0;
  const found = versionOf(connection);
  if (found > head) return fail({ code: 'store-newer', found, known: head });
  if (found === head) return ok(found);
  const tables = connection.prepare('SELECT count(*) FROM sqlite_schema').pluck().get() as number;
  if (found === 0 && tables > 0) return fail({ code: 'store-damaged', detail: 'another program’s database' });
  if (found > 0) connection.prepare('VACUUM INTO ?').run(backupFile(file, found));

  // Foreign keys cannot be switched inside a transaction; steps that rebuild tables need them off.
  connection.pragma('foreign_keys = OFF');
  try {
    connection.exec('BEGIN IMMEDIATE');
    for (const step of steps) if (step.version > versionOf(connection)) lift(connection, step);
    const broken = connection.pragma('foreign_key_check') as unknown[];
    assert(broken.length === 0, `lifting left ${broken.length} broken references`);
    connection.exec('COMMIT');
  } finally {
    if (connection.inTransaction) connection.exec('ROLLBACK');
    connection.pragma('foreign_keys = ON');
  }
  return ok(found);
}

function lift(connection: Connection, step: MigrationStep): void {
  step.up(connection);
  connection.pragma(`user_version = ${step.version}`);
}
