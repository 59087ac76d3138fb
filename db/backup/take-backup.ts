import { closeSync, fdatasyncSync, mkdirSync, openSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fail, ok, type Result } from '#core/quantity/result.ts';
import type { Connection } from '../connection.ts';
import { storeProblem } from '../store-problem.ts';
import { type BackupReason, backupName } from './backup-name.ts';
import { backupsToDrop } from './backups-to-drop.ts';
import { checkCopy } from './check-copy.ts';
import { hasRoom, storeSize } from './disk-room.ts';
import { type Backup, listBackups } from './list-backups.ts';
import { dropPart, finish, partOf } from './whole-file.ts';

/** One megabyte in pages of 4 kB at a time, so that an edit waits for milliseconds at most. */
const pagesAtATime = 256;
/** So many megabytes are handed to the disk before more are written: an edit must wait for what is under way. */
const stepsToTheDisk = 8;
/** Copying is the first part of the way, checking the copy the rest. */
const copyShare = 0.7;

/** What copying tells on its way. */
export interface CopyWatch {
  /** How far it is, 0 to 1. */
  readonly onShare?: (share: number) => void;
  /** The store itself is not read any more. */
  readonly onCopied?: () => void;
}

/**
 * Copies an open store page by page while work on it goes on, opens the copy and checks it, and only then
 * gives it its name; older backups no longer needed go. `onShare` hears 0 to 1. `store-full` before any
 * copying when the disk has no room for it, `store-damaged` when the copy is not sound. A backup that could
 * not be finished leaves nothing behind.
 */
export async function takeBackup(
  connection: Connection,
  folder: string,
  reason: BackupReason,
  now: string,
  { onShare, onCopied }: CopyWatch = {},
): Promise<Result<Backup>> {
  const fileName = backupName(now, reason);
  const file = join(folder, fileName);
  const part = partOf(file);
  try {
    mkdirSync(folder, { recursive: true });
    dropLeftovers(folder);
    if (!hasRoom(folder, storeSize(connection).bytes)) return fail({ code: 'store-full' });
    await copyInSteps(connection, part, (share) => onShare?.(copyShare * share));
    onCopied?.();
    const checked = await checkCopy(part, (share) => onShare?.(copyShare + (1 - copyShare) * share));
    if (!checked.ok) return dropped(part, checked);
    finish(part, file);
    for (const old of backupsToDrop(listBackups(folder), now)) rmSync(join(folder, old.fileName));
    const made = listBackups(folder).find((each) => each.fileName === fileName);
    return made ? ok(made) : fail({ code: 'not-found', thing: fileName });
  } catch (error) {
    dropPart(part);
    const problem = storeProblem(error);
    if (!problem) throw error;
    return fail(problem);
  }
}

function dropped(part: string, refused: Result<never>): Result<never> {
  dropPart(part);
  return refused;
}

/** What a backup cut off by the end of its program left. One program has the folder, so none is in use. */
function dropLeftovers(folder: string): void {
  for (const name of readdirSync(folder)) {
    if (/\.part(-wal|-shm|-journal)?$/.test(name)) rmSync(join(folder, name), { force: true });
  }
}

async function copyInSteps(
  connection: Connection,
  part: string,
  onShare: (share: number) => void,
): Promise<void> {
  const handle = openSync(part, 'a');
  let steps = 0;
  try {
    await connection.backup(part, {
      progress: ({ totalPages, remainingPages }) => {
        onShare(totalPages > 0 ? (totalPages - remainingPages) / totalPages : 0);
        if (++steps % stepsToTheDisk === 0) fdatasyncSync(handle);
        return pagesAtATime;
      },
    });
  } finally {
    closeSync(handle);
  }
}
