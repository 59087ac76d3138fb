import { existsSync, renameSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { HostProblem, Problem } from '#core/quantity/problem.ts';
import { fail, type Result } from '#core/quantity/result.ts';
import { type BackupReason, backupName } from '#db/backup/backup-name.ts';
import { type Backup, backupFolderOf, listBackups } from '#db/backup/list-backups.ts';
import { prepareRestore } from '#db/backup/prepare-restore.ts';
import { asideFolderOf, swapStore } from '#db/backup/swap-store.ts';
import { takeBackup } from '#db/backup/take-backup.ts';
import type { Connection } from '#db/connection.ts';
import { forgetLoss, type Loss, readLoss } from '#db/salvage/loss-store.ts';
import type { Log } from './log.ts';

/** How the backups stand. */
export interface BackupState {
  readonly backups: readonly Backup[];
  readonly folder: string;
  readonly running: number | null;
  readonly trouble: 'full' | 'read-only' | 'damaged' | 'other' | null;
}

/** Makes backups of the store in use and goes back to them. */
export interface BackupKeeper {
  state(): BackupState;
  /** Begins one; a running one goes on instead. */
  begin(reason: BackupReason): void;
  /** Whatever begun is over, well or not. */
  settled(): Promise<void>;
  restore(fileName: string): Result<null>;
  loss(): Loss | null;
  lossNoted(): void;
  stop(): void;
}

const dayMs = 86_400_000;
/** A working day's program is often left open overnight, so the date is looked at now and then. */
const lookEveryMs = 15 * 60_000;

/** What the keeper needs of the workshop. */
export interface KeptStore {
  readonly file: string;
  readonly now: () => string;
  readonly log: Log;
  connection(): Connection;
  close(): void;
  /** Opens whatever store is in place now. */
  reopen(): Result<null>;
}

/** A keeper over the store of a workshop. */
export function keepBackups(store: KeptStore): BackupKeeper {
  const folder = backupFolderOf(dirname(store.file));
  let running: number | null = null;
  let trouble: BackupState['trouble'] = null;
  let work: Promise<void> = Promise.resolve();

  const take = async (reason: BackupReason): Promise<void> => {
    try {
      const taken = await takeBackup(store.connection(), folder, reason, store.now(), (share) => {
        running = share;
      });
      trouble = taken.ok ? null : troubleOf(taken.problem);
      if (!taken.ok) store.log.trouble(`backup ${taken.problem.code}`, null);
    } catch (error) {
      // A store closed under a running backup ends here too: the program is ending or another store came.
      trouble = store.connection().open ? 'other' : trouble;
      if (store.connection().open) store.log.trouble('backup', error);
    }
    running = null;
  };
  const begin = (reason: BackupReason): void => {
    if (running !== null) return;
    running = 0;
    work = take(reason);
  };
  const timer = setInterval(() => {
    const last = listBackups(folder)[0]?.takenAt;
    if (last && Date.parse(store.now()) - Date.parse(last) < dayMs) return;
    if (changedSince(store.file, last)) begin('daily');
  }, lookEveryMs);
  timer.unref();

  return {
    state: () => ({ backups: listBackups(folder), folder, running, trouble }),
    begin: (reason) => {
      if (reason !== 'start' || changedSince(store.file, listBackups(folder)[0]?.takenAt)) begin(reason);
    },
    settled: () => work,
    restore: (fileName) => {
      if (running !== null) return fail({ code: 'store-busy' });
      const prepared = prepareRestore(store.file, folder, fileName);
      if (!prepared.ok) return prepared;
      store.close();
      // Closing puts everything into the one file, so that a rename keeps all of it; but not on a full disk.
      if (!existsSync(`${store.file}-wal`)) {
        renameSync(store.file, join(folder, backupName(store.now(), 'before-restore')));
      }
      swapStore(store.file, asideFolderOf(store.file, store.now()));
      return store.reopen();
    },
    loss: () => readLoss(store.file),
    lossNoted: () => forgetLoss(store.file),
    stop: () => clearInterval(timer),
  };
}

/** Whether anything was written to a store since a time; true when it is not known. */
function changedSince(file: string, at: string | undefined): boolean {
  if (at === undefined) return true;
  return ['', '-wal'].some((ending) => {
    const written = statSync(`${file}${ending}`, { throwIfNoEntry: false })?.mtimeMs;
    return written !== undefined && written > Date.parse(at);
  });
}

const troubles: Partial<Record<HostProblem['code'], BackupState['trouble']>> = {
  'store-full': 'full',
  'store-read-only': 'read-only',
  'store-damaged': 'damaged',
};

const troubleOf = (problem: Problem): BackupState['trouble'] =>
  troubles[problem.code as HostProblem['code']] ?? 'other';
