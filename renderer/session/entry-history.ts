import type { Job, JobEntry } from '#core/job/job-document.ts';
import type { EntryId } from '#core/quantity/id.ts';

/** What undo and redo would take back next, in that order; empty when there is nothing. */
export interface EntryHistory {
  readonly undo: readonly EntryId[];
  /** The take-backs that redo would itself take back. */
  readonly redo: readonly EntryId[];
}

/** One thing the user did, as the entries that must be taken back to undo it, and those that did so. */
interface Step {
  readonly ids: readonly EntryId[];
  readonly takeBacks: readonly EntryId[];
}

/**
 * Undo and redo read from the record alone: undoing takes back the newest thing done, redoing takes those
 * take-backs back, and anything new ends what could be redone. So both survive a restart without a list of
 * their own. An entry put right (its take-back and what replaces it, of one moment) is one thing done; so are a look
 * and the trim it was entered with, and so is taking back or bringing back an older entry by hand. Taking back
 * the newest by hand is the same as undoing it. O(entries) but for the search among what is undone.
 */
export function entryHistory(job: Job): EntryHistory {
  const done: Step[] = [];
  let undone: Step[] = [];
  const known = new Set<EntryId>();
  const did = (...ids: readonly EntryId[]): void => {
    done.push({ ids, takeBacks: [] });
    undone = [];
  };
  for (const [i, entry] of job.entries.entries()) {
    known.add(entry.id);
    if (entry.type !== 'take-back') {
      const before = job.entries[i - 1];
      if (goesWith(before, entry)) {
        const step = done.pop();
        did(entry.id, ...(step?.ids ?? []));
      } else if (!replaces(before, entry)) did(entry.id);
      else {
        // The take-back before it was no step of its own: what it took back stands below this one again.
        const top = done.at(-1);
        const last = undone.at(-1);
        if (top?.ids[0] === before.id) done.pop();
        else if (last?.takeBacks.includes(before.id)) done.push({ ids: last.ids, takeBacks: [] });
        did(entry.id, before.id);
      }
      continue;
    }
    if (!known.has(entry.entryId)) continue;
    const last = undone.at(-1);
    const top = done.at(-1);
    if (
      last &&
      last.takeBacks.length < last.ids.length &&
      last.ids[last.takeBacks.length] === entry.entryId
    ) {
      undone[undone.length - 1] = { ids: last.ids, takeBacks: [...last.takeBacks, entry.id] };
    } else if (last?.takeBacks.includes(entry.entryId)) {
      undone.pop();
      const takeBacks = last.takeBacks.filter((id) => id !== entry.entryId);
      if (takeBacks.length > 0) undone.push({ ids: last.ids, takeBacks });
      else done.push({ ids: last.ids, takeBacks: [] });
    } else if (top?.ids[0] === entry.entryId) {
      done.pop();
      undone.push({ ids: top.ids, takeBacks: [entry.id] });
    } else did(entry.id);
  }
  return { undo: done.at(-1)?.ids ?? [], redo: undone.at(-1)?.takeBacks ?? [] };
}

/** Whether an entry was put in place of the one that the take-back before it took, in one go. */
function replaces(
  before: JobEntry | undefined,
  entry: JobEntry,
): before is Extract<JobEntry, { type: 'take-back' }> {
  return before?.type === 'take-back' && before.at === entry.at;
}

/** Whether an entry says something of the trim that the one before it took off, in one go: a look, or more trim. */
function goesWith(before: JobEntry | undefined, entry: JobEntry): boolean {
  const isLook = entry.type === 'inspection' || entry.type === 'panel-off';
  return isLook && before?.type === 'panel-off' && before.at === entry.at;
}
