import type { EntryOf, JobEntry } from './job-document.ts';

/**
 * The entries that say where the fault is now. As long as nobody went on searching after a repair these are
 * all of them. After that, readings taken before the repair speak of damage that is gone and are left out,
 * a cause proved then counts as damage that is not the cause any more, and what was measured when the repair
 * was tried counts as a reading. O(entries).
 * @example
 * evidenceEntries(sample.job.entries).length // => 0
 */
export function evidenceEntries(entries: readonly JobEntry[]): readonly JobEntry[] {
  const goesOn = entries.findLastIndex((entry) => entry.type === 'search-on');
  if (goesOn < 0) return entries;
  const lastRepair = entries.findLastIndex((entry, i) => i < goesOn && entry.type === 'repair');
  return entries.flatMap((entry, i): JobEntry[] => {
    if (i > goesOn) return [entry];
    if (entry.type === 'reading') return i > lastRepair ? [entry] : [];
    if (entry.type === 'proof' && i > lastRepair) {
      const reading = readingOf(entry);
      return reading ? [reading] : [];
    }
    if (entry.type === 'inspection' && entry.result === 'found') {
      return [{ ...entry, result: 'seen-damaged-not-cause' }];
    }
    return [entry];
  });
}

function readingOf({ id, at, reading, state, meter, note }: EntryOf<'proof'>): JobEntry | null {
  if (!reading || !state) return null;
  return { id, at, type: 'reading', reading, state, note, ...(meter ? { meter } : {}) };
}

/**
 * The look that proved the cause and still ends the search; null while the search goes on. O(entries).
 * @example
 * foundLook(sample.job.entries) // => null
 */
export function foundLook(entries: readonly JobEntry[]): EntryOf<'inspection'> | null {
  const looks = evidenceEntries(entries).filter((entry) => entry.type === 'inspection');
  return looks.findLast((look) => look.result === 'found') ?? null;
}
