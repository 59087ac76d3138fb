import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { type BackupReason, readBackupName } from './backup-name.ts';

/** One whole copy of the store. Only copies that were opened and found sound get such a name. */
export interface Backup {
  readonly fileName: string;
  /** ISO 8601 in UTC. */
  readonly takenAt: string;
  readonly reason: BackupReason;
  readonly bytes: number;
}

/** The folder of a store's backups. */
export const backupFolderOf = (dataFolder: string): string => join(dataFolder, 'backups');

/** The backups in a folder, newest first; none where there is no folder. */
export function listBackups(folder: string): Backup[] {
  let names: string[];
  try {
    names = readdirSync(folder);
  } catch {
    return [];
  }
  return names
    .flatMap((fileName): Backup[] => {
      const read = readBackupName(fileName);
      const bytes = statSync(join(folder, fileName), { throwIfNoEntry: false })?.size;
      return read && bytes !== undefined ? [{ fileName, ...read, bytes }] : [];
    })
    .sort((a, b) => b.takenAt.localeCompare(a.takenAt));
}
