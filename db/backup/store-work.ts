import Database from 'better-sqlite3';
import type { Result } from '#core/quantity/result.ts';
import type { Connection } from '../connection.ts';
import type { BackupReason } from './backup-name.ts';
import { prepareCompact } from './prepare-compact.ts';
import { prepareRestore } from './prepare-restore.ts';
import { takeBackup } from './take-backup.ts';

/** A long piece of work on a store's file, done beside the connection the program works with. */
export type StoreWork =
  | {
      readonly doing: 'backup';
      readonly file: string;
      readonly folder: string;
      readonly reason: BackupReason;
      readonly now: string;
    }
  | { readonly doing: 'restore'; readonly file: string; readonly folder: string; readonly fileName: string }
  | { readonly doing: 'compact'; readonly file: string };

/** What a piece of work tells on its way. Throwing from `onShare` ends it; nothing half done stays. */
export interface WorkWatch {
  /** How far it is, 0 to 1. */
  onShare(share: number): void;
  /** From now on the store itself is not read any more. */
  onStoreClosed(): void;
}

/** Does a piece of work; problems are those of `takeBackup`, `prepareRestore` and `prepareCompact`. */
export async function doStoreWork(work: StoreWork, watch: WorkWatch): Promise<Result<null>> {
  const onShare = (share: number): void => watch.onShare(share);
  if (work.doing === 'restore') {
    watch.onStoreClosed();
    return withoutValue(prepareRestore(work.file, work.folder, work.fileName, onShare));
  }
  const store = openSnapshot(work.file);
  const onCopied = (): void => {
    store.close();
    watch.onStoreClosed();
  };
  try {
    return withoutValue(
      work.doing === 'backup'
        ? await takeBackup(store, work.folder, work.reason, work.now, { onShare, onCopied })
        : await prepareCompact(store, work.file, { onShare, onCopied }),
    );
  } finally {
    onCopied();
  }
}

const withoutValue = (result: Result<unknown>): Result<null> =>
  result.ok ? { ok: true, value: null } : result;

/** The store as it stands now, whatever is written to it meanwhile: so a copy never has to begin anew. */
function openSnapshot(file: string): Connection {
  const store = new Database(file, { fileMustExist: true });
  store.exec('BEGIN');
  store.prepare('SELECT count(*) FROM sqlite_schema').get();
  return store;
}
