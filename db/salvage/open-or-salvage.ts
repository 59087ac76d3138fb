import { copyFileSync, existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import type { Result } from '#core/quantity/result.ts';
import { backupFolderOf, listBackups } from '../backup/list-backups.ts';
import { asideFolderOf, comingOf, swapStore } from '../backup/swap-store.ts';
import { dropPart, finish, partOf } from '../backup/whole-file.ts';
import type { Connection } from '../connection.ts';
import { openStore } from '../open-store.ts';
import { storeProblem } from '../store-problem.ts';
import { keepLoss, type Loss } from './loss-store.ts';
import { salvageStore } from './salvage-store.ts';

/**
 * Opens the store in a file. One that is damaged, or no store at all, is set aside whole: a new one takes its
 * place with everything that can be read of it, and what cannot from the newest sound backup; what was lost
 * is kept to be told (`readLoss`). A disk that fails to read (`SQLITE_IOERR`) is not taken for a damaged file.
 * Problems are those of `openStore`.
 */
export function openOrSalvage(file: string, now: string): Result<Connection> {
  const opened = openStore(file);
  if (opened.ok || opened.problem.code !== 'store-damaged') return opened;
  if (opened.problem.detail.startsWith('SQLITE_IOERR')) return opened;
  const part = partOf(comingOf(file));
  const backupCopy = `${file}.backup.part`;
  try {
    dropPart(part);
    const made = openStore(part);
    if (!made.ok) return made;
    const asideFolder = asideFolderOf(file, now);
    const backup = newestSound(file, backupCopy);
    const damaged = openDamaged(file);
    const salvaged = salvageStore(damaged, backup?.connection ?? null, made.value);
    damaged?.close();
    backup?.connection.close();
    made.value.pragma('journal_mode = DELETE');
    made.value.close();
    const loss: Loss = { at: now, asideFolder, backupAt: backup?.takenAt ?? null, ...salvaged };
    mkdirSync(asideFolder, { recursive: true });
    writeFileSync(join(asideFolder, 'what-was-lost.json'), JSON.stringify(loss, null, 2));
    // Told first: a program cut off from here on ends the change at its next start, without looking again.
    keepLoss(file, loss);
    finish(part, comingOf(file));
    swapStore(file, asideFolder);
  } catch (error) {
    const problem = storeProblem(error);
    if (!problem) throw error;
    return { ok: false, problem };
  } finally {
    dropPart(part);
    dropPart(backupCopy);
  }
  return openStore(file);
}

/** The damaged store for reading only, so that it stays as it was found; null when it cannot be opened. */
function openDamaged(file: string): Connection | null {
  try {
    const connection = new Database(file, { readonly: true });
    connection.pragma('trusted_schema = OFF');
    if (connection.prepare(`SELECT 1 FROM sqlite_schema WHERE name = 'map_record'`).get()) return connection;
    connection.close();
  } catch {
    // No database, or one whose list of tables cannot be read.
  }
  return null;
}

/** The newest backup that opens, as a copy lifted to this version. */
function newestSound(
  file: string,
  copy: string,
): { readonly connection: Connection; readonly takenAt: string } | null {
  const folder = backupFolderOf(dirname(file));
  for (const { fileName, takenAt } of listBackups(folder)) {
    dropPart(copy);
    if (!existsSync(join(folder, fileName))) continue;
    copyFileSync(join(folder, fileName), copy);
    const opened = openStore(copy);
    if (opened.ok) return { connection: opened.value, takenAt };
  }
  return null;
}
