import { dirname } from 'node:path';
import { fail, ok, type Result } from '#core/quantity/result.ts';
import type { Connection } from '../connection.ts';
import { storeProblem } from '../store-problem.ts';
import { checkCopy } from './check-copy.ts';
import { hasRoom, storeSize } from './disk-room.ts';
import type { CopyWatch } from './take-backup.ts';
import { dropPart, partOf, settle } from './whole-file.ts';

/**
 * Writes all of a store into a new file without its empty pages, opens and checks that, and gives its name; it
 * is whole and on the disk, and takes the store's place only by a rename. `store-full` before any writing when
 * the disk has no room for it, `store-damaged` when something in the store could not be read.
 */
export async function prepareCompact(
  store: Connection,
  file: string,
  { onShare, onCopied }: CopyWatch = {},
): Promise<Result<string>> {
  const part = partOf(file);
  try {
    dropPart(part);
    const { bytes, emptyBytes } = storeSize(store);
    if (!hasRoom(dirname(file), bytes - emptyBytes)) return fail({ code: 'store-full' });
    if (store.inTransaction) store.exec('COMMIT');
    store.prepare('VACUUM INTO ?').run(part);
    onCopied?.();
    const checked = await checkCopy(part, (share) => onShare?.(writtenShare + (1 - writtenShare) * share));
    if (checked.ok) {
      settle(part);
      return ok(part);
    }
    dropPart(part);
    return checked;
  } catch (error) {
    dropPart(part);
    const problem = storeProblem(error);
    if (!problem) throw error;
    return fail(problem);
  }
}

/** Writing the new file is the first part of the way, checking it the rest. */
export const writtenShare = 0.6;
