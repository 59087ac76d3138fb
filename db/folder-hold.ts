import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { fail, ok, type Result } from '#core/quantity/result.ts';
import { storeProblem } from './store-problem.ts';

/** A claim on a data folder; the operating system drops it when the process ends, however it ends. */
export interface FolderHold {
  release(): void;
}

/**
 * Claims a data folder for this process, so that two never write the same store. `store-busy` when
 * another process has it. The claim is SQLite's own file lock on a file of its own: unlike a written
 * process number it cannot be left behind by a crash.
 */
export function holdFolder(folder: string): Result<FolderHold> {
  let lock: Database.Database | undefined;
  try {
    mkdirSync(folder, { recursive: true });
    lock = new Database(join(folder, 'in-use.lock'), { timeout: 0 });
    lock.exec('BEGIN EXCLUSIVE');
  } catch (error) {
    lock?.close();
    const problem = storeProblem(error);
    if (!problem) throw error;
    return fail(problem);
  }
  const held = lock;
  return ok({ release: () => held.close() });
}
