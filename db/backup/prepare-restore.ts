import { constants, copyFileSync } from 'node:fs';
import { join } from 'node:path';
import { fail, ok, type Result } from '#core/quantity/result.ts';
import { openStore } from '../open-store.ts';
import { storeProblem } from '../store-problem.ts';
import { listBackups } from './list-backups.ts';
import { comingOf } from './swap-store.ts';
import { dropPart, finish, partOf } from './whole-file.ts';

/**
 * Makes a new store from a backup, lifted to the newest version and opened once, under the name `swapStore`
 * takes it from. The backup and the store in use stay as they are. `not-found` for a backup that is not
 * there; whatever `openStore` says of one that went bad since.
 */
export function prepareRestore(file: string, backupFolder: string, fileName: string): Result<string> {
  if (!listBackups(backupFolder).some((each) => each.fileName === fileName)) {
    return fail({ code: 'not-found', thing: fileName });
  }
  const part = partOf(comingOf(file));
  try {
    dropPart(part);
    copyFileSync(join(backupFolder, fileName), part, constants.COPYFILE_FICLONE);
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
