import { mkdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { assert } from '#core/quantity/assert.ts';
import { fail, ok, type Result } from '#core/quantity/result.ts';
import { backupName } from './backup/backup-name.ts';
import { backupFolderOf } from './backup/list-backups.ts';
import { dropPart, finish, partOf } from './backup/whole-file.ts';
import type { Connection } from './connection.ts';
import { type MigrationStep, migrationSteps } from './migrations/index.ts';

const versionOf = (connection: Connection): number =>
  connection.pragma('user_version', { simple: true }) as number;

/** Keeps a copy of the store as it is, opened and found sound before it counts as one. */
function keepBefore(connection: Connection, file: string): Result<null> {
  const folder = backupFolderOf(dirname(file));
  mkdirSync(folder, { recursive: true });
  const copy = join(folder, backupName(new Date().toISOString(), 'before-lifting'));
  const part = partOf(copy);
  dropPart(part);
  try {
    connection.prepare('VACUUM INTO ?').run(part);
    const opened = new Database(part, { readonly: true });
    const said = opened.pragma('integrity_check(1)', { simple: true }) as string;
    opened.close();
    if (said !== 'ok') return fail({ code: 'store-damaged', detail: said });
    finish(part, copy);
    return ok(null);
  } finally {
    dropPart(part);
  }
}

/**
 * Lifts a store to the newest version: all missing steps and the new version number in one immediate
 * transaction, after a copy of an existing store was put among its backups. Gives the version it had.
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
  const kept = found > 0 ? keepBefore(connection, file) : ok(null);
  if (!kept.ok) return kept;

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
