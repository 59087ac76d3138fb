import type { Job } from '#core/job/job-document.ts';
import type { EntryId } from '#core/quantity/id.ts';

/** What undo and redo would take back next; null when there is nothing. */
export interface EntryHistory {
  readonly undo: EntryId | null;
  /** The take-back that redo would itself take back. */
  readonly redo: EntryId | null;
}

/**
 * Undo and redo read from the record alone: undoing adds a take-back of the newest standing entry,
 * redoing takes that take-back back, and any new entry ends what could be redone. So both survive a
 * restart without a list of their own. O(entries).
 */
export function entryHistory(job: Job): EntryHistory {
  let done: EntryId[] = [];
  let undone: { readonly takeBack: EntryId; readonly entry: EntryId }[] = [];
  for (const entry of job.entries) {
    if (entry.type !== 'take-back') {
      done.push(entry.id);
      undone = [];
      continue;
    }
    const redone = undone.find((each) => each.takeBack === entry.entryId);
    if (redone) {
      undone = undone.filter((each) => each !== redone);
      done.push(redone.entry);
    } else if (done.includes(entry.entryId)) {
      done = done.filter((id) => id !== entry.entryId);
      undone.push({ takeBack: entry.id, entry: entry.entryId });
    }
  }
  return { undo: done.at(-1) ?? null, redo: undone.at(-1)?.takeBack ?? null };
}
