import { existsSync, renameSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { HostProblem, Problem } from '#core/quantity/problem.ts';
import { fail, ok, type Result } from '#core/quantity/result.ts';
import { type BackupReason, backupName } from '#db/backup/backup-name.ts';
import { type StoreSize, storeSize } from '#db/backup/disk-room.ts';
import { type Backup, backupFolderOf, listBackups } from '#db/backup/list-backups.ts';
import { writtenShare } from '#db/backup/prepare-compact.ts';
import type { StoreWork } from '#db/backup/store-work.ts';
import { asideFolderOf, swapStore } from '#db/backup/swap-store.ts';
import { dropPart, finish, partOf } from '#db/backup/whole-file.ts';
import { noteClosed } from '#db/closed-store.ts';
import type { Connection } from '#db/connection.ts';
import { forgetLoss, type Loss, readLoss } from '#db/salvage/loss-store.ts';
import type { Log } from './log.ts';
import { type RunningWork, runStoreWork } from './run-store-work.ts';

/** Why a piece of work on the store was not done; `busy`: the store was written to all the while. */
export type StoreTrouble = 'full' | 'read-only' | 'damaged' | 'busy' | 'other';

/** How the last piece of one kind of work ended in this run of the program. */
export interface StoreWorkEnd {
  readonly doing: StoreWork['doing'];
  readonly trouble: StoreTrouble | null;
  /** The store's length before and after. */
  readonly bytesBefore: number;
  readonly bytesAfter: number;
}

/** How the backups stand. */
export interface BackupState {
  readonly backups: readonly Backup[];
  readonly folder: string;
  readonly doing: StoreWork['doing'] | null;
  readonly running: number | null;
  readonly trouble: StoreTrouble | null;
  readonly ended: StoreWorkEnd | null;
  readonly store: StoreSize;
}

/** Makes backups of the store in use, goes back to them, and gives back what the store does not need. */
export interface BackupKeeper {
  state(): BackupState;
  /** Begins one; work that is running goes on instead. */
  begin(reason: BackupReason): void;
  /** Whatever was begun is over, well or not. */
  settled(): Promise<void>;
  /** Begins to go back. `not-found`, or `store-busy` while other work is running. */
  beginRestore(fileName: string): Result<null>;
  /** Begins to write the store anew without its empty pages. `store-busy` while other work is running. */
  beginCompact(): Result<null>;
  /** Something in the store could not be read: the next start is to look through all of it. */
  doubt(): void;
  isDoubted(): boolean;
  isBusy(): boolean;
  loss(): Loss | null;
  lossNoted(): void;
  stop(): void;
}

const dayMs = 86_400_000;
/** A working day's program is often left open overnight, so the date is looked at now and then. */
const lookEveryMs = 15 * 60_000;
/** A store that was written to while it was written anew is begun again so often. */
const mostTries = 3;

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
  let doing: StoreWork['doing'] | null = null;
  let share = 0;
  let running: RunningWork | null = null;
  let trouble: StoreTrouble | null = null;
  let ended: StoreWorkEnd | null = null;
  let doubted = false;
  let work: Promise<void> = Promise.resolve();

  const run = (task: StoreWork): Promise<Result<null>> => {
    share = 0;
    running = runStoreWork(task, (told) => {
      share = told;
    });
    return running.done;
  };
  const end = async (kind: StoreWork['doing'], task: () => Promise<Result<null>>): Promise<void> => {
    doing = kind;
    const bytesBefore = storeSize(store.connection()).bytes;
    let found: StoreTrouble | null = null;
    try {
      const done = await task();
      found = done.ok ? null : troubleOf(done.problem);
      if (!done.ok) store.log.trouble(`${kind} ${done.problem.code}`, null);
    } catch (error) {
      // A store closed under running work ends here too: the program is ending.
      if (store.connection().open) {
        found = 'other';
        store.log.trouble(kind, error);
      }
    }
    if (found === 'damaged' && kind !== 'restore') doubted = true;
    if (kind === 'backup') trouble = found;
    running = null;
    doing = null;
    if (!store.connection().open) return;
    ended = { doing: kind, trouble: found, bytesBefore, bytesAfter: storeSize(store.connection()).bytes };
  };
  const begin = (reason: BackupReason): void => {
    if (doing !== null) return;
    // So that closing need not touch the file, which would look like a change since this backup.
    store.connection().pragma('wal_checkpoint(PASSIVE)');
    work = end('backup', () => run({ doing: 'backup', file: store.file, folder, reason, now: store.now() }));
  };
  const restore = async (fileName: string): Promise<Result<null>> => {
    const prepared = await run({ doing: 'restore', file: store.file, folder, fileName });
    if (!prepared.ok) return prepared;
    store.close();
    // Closing puts everything into the one file, so that a rename keeps all of it; but not on a full disk.
    if (!existsSync(`${store.file}-wal`)) {
      renameSync(store.file, join(folder, backupName(store.now(), 'before-restore')));
    }
    swapStore(store.file, asideFolderOf(store.file, store.now()));
    noteClosed(store.file);
    doubted = false;
    return store.reopen();
  };
  const compact = async (): Promise<Result<null>> => {
    for (let tries = 0; tries < mostTries; tries++) {
      const before = changesOf(store.connection());
      const prepared = await run({ doing: 'compact', file: store.file });
      if (!prepared.ok) return prepared;
      if (!store.connection().open || changesOf(store.connection()) !== before) continue;
      store.close();
      // What a close could not put into the file is only beside it: then the old file stays.
      if (!existsSync(`${store.file}-wal`)) {
        finish(partOf(store.file), store.file);
        noteClosed(store.file);
      }
      dropPart(partOf(store.file));
      return store.reopen();
    }
    dropPart(partOf(store.file));
    return fail({ code: 'store-busy' });
  };
  const timer = setInterval(() => {
    const last = listBackups(folder)[0]?.takenAt;
    if (last && Date.parse(store.now()) - Date.parse(last) < dayMs) return;
    if (changedSince(store.file, last)) begin('daily');
  }, lookEveryMs);
  timer.unref();

  return {
    state: () => ({
      backups: listBackups(folder),
      folder,
      doing,
      running: doing === 'compact' ? Math.max(share, shareWritten(store)) : doing && share,
      trouble: doubted ? 'damaged' : trouble,
      ended,
      store: storeSize(store.connection()),
    }),
    begin: (reason) => {
      if (reason !== 'start' || changedSince(store.file, listBackups(folder)[0]?.takenAt)) begin(reason);
    },
    settled: () => work,
    beginRestore: (fileName) => {
      if (doing !== null) return fail({ code: 'store-busy' });
      if (!listBackups(folder).some((each) => each.fileName === fileName)) {
        return fail({ code: 'not-found', thing: fileName });
      }
      work = end('restore', () => restore(fileName));
      return ok(null);
    },
    beginCompact: () => {
      if (doing !== null) return fail({ code: 'store-busy' });
      work = end('compact', compact);
      return ok(null);
    },
    doubt: () => {
      doubted = true;
    },
    isDoubted: () => doubted,
    isBusy: () => doing !== null,
    loss: () => readLoss(store.file),
    lossNoted: () => forgetLoss(store.file),
    stop: () => {
      clearInterval(timer);
      running?.stop();
    },
  };
}

/** Rows changed over a connection since it was opened; all that is written to the store goes over this one. */
const changesOf = (connection: Connection): number =>
  connection.prepare('SELECT total_changes()').pluck().get() as number;

/** How far the new file of a store is, by its length: writing it tells nothing on its way. */
function shareWritten({ file, connection }: KeptStore): number {
  const { bytes, emptyBytes } = storeSize(connection());
  const written = statSync(partOf(file), { throwIfNoEntry: false })?.size ?? 0;
  return writtenShare * Math.min(1, written / Math.max(1, bytes - emptyBytes));
}

/** Whether anything was written to a store since a time; true when it is not known. */
function changedSince(file: string, at: string | undefined): boolean {
  if (at === undefined) return true;
  return ['', '-wal'].some((ending) => {
    const written = statSync(`${file}${ending}`, { throwIfNoEntry: false })?.mtimeMs;
    return written !== undefined && written > Date.parse(at);
  });
}

const troubles: Partial<Record<HostProblem['code'], StoreTrouble>> = {
  'store-full': 'full',
  'store-read-only': 'read-only',
  'store-damaged': 'damaged',
  'store-busy': 'busy',
};

const troubleOf = (problem: Problem): StoreTrouble =>
  troubles[problem.code as HostProblem['code']] ?? 'other';
