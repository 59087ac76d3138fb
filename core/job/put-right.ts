import type { EntryId } from '../quantity/id.ts';
import type { Job, JobEntry } from './job-document.ts';

/**
 * The entries that were put in place of others, each with the one the user first entered there. Putting right is
 * a take-back and, of the same moment and right after it, an entry of the kind that was taken back; put right
 * again, it still goes back to the first. O(entries).
 * @example
 * putRight(sample.job).size // => 0
 */
export function putRight({ entries }: Pick<Job, 'entries'>): ReadonlyMap<EntryId, JobEntry> {
  const known = new Map<EntryId, JobEntry>();
  const firsts = new Map<EntryId, JobEntry>();
  for (const [i, entry] of entries.entries()) {
    const before = entries[i - 1];
    if (before?.type === 'take-back' && before.at === entry.at) {
      const taken = known.get(before.entryId);
      if (taken && taken.type === entry.type) firsts.set(entry.id, firsts.get(taken.id) ?? taken);
    }
    if (entry.type !== 'take-back') known.set(entry.id, entry);
  }
  return firsts;
}
