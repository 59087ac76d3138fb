import { closeSync, fdatasyncSync, openSync, readSync, statSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { fail, ok, type Result } from '#core/quantity/result.ts';
import { openStore } from '../open-store.ts';
import { storeProblem } from '../store-problem.ts';
import { listBackups } from './list-backups.ts';
import { comingOf } from './swap-store.ts';
import { dropPart, finish, partOf } from './whole-file.ts';

const pieceBytes = 8_000_000;
/** Copying is the first part of the way, opening the copy the rest. */
const copyShare = 0.6;

/**
 * Makes a new store from a backup, lifted to the newest version and opened once, under the name `swapStore`
 * takes it from. The backup and the store in use stay as they are. `not-found` for a backup that is not
 * there; whatever `openStore` says of one that went bad since.
 */
export function prepareRestore(
  file: string,
  backupFolder: string,
  fileName: string,
  onShare: (share: number) => void = () => undefined,
): Result<string> {
  if (!listBackups(backupFolder).some((each) => each.fileName === fileName)) {
    return fail({ code: 'not-found', thing: fileName });
  }
  const part = partOf(comingOf(file));
  try {
    dropPart(part);
    copyInPieces(join(backupFolder, fileName), part, (share) => onShare(copyShare * share));
    const opened = openStore(part);
    if (!opened.ok) {
      dropPart(part);
      return opened;
    }
    // One plain file, so that a rename moves all of it.
    opened.value.pragma('journal_mode = DELETE');
    opened.value.close();
    finish(part, comingOf(file));
    return ok(comingOf(file));
  } catch (error) {
    dropPart(part);
    const problem = storeProblem(error);
    if (!problem) throw error;
    return fail(problem);
  }
}

/** Each piece is on the disk before the next: what else is written meanwhile never waits for all of it. */
function copyInPieces(from: string, to: string, onShare: (share: number) => void): void {
  const piece = Buffer.allocUnsafe(pieceBytes);
  const size = statSync(from).size;
  const source = openSync(from, 'r');
  const target = openSync(to, 'w');
  try {
    for (let at = 0, read = 1; read > 0; at += read) {
      read = readSync(source, piece, 0, pieceBytes, at);
      if (read > 0) writeSync(target, piece, 0, read, at);
      fdatasyncSync(target);
      onShare(size > 0 ? Math.min(1, (at + read) / size) : 1);
    }
  } finally {
    closeSync(source);
    closeSync(target);
  }
}
