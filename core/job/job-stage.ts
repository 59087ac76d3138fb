import { foundLook } from './evidence-entries.ts';
import type { EntryOf, JobEntry } from './job-document.ts';
import { findProof } from './proved-find.ts';

/** How far a job has come. */
export const jobStages = ['testing', 'opening', 'found', 'repaired', 'closed'] as const;
export type JobStage = (typeof jobStages)[number];

/**
 * How far a job has come, from its standing entries: testing until a panel comes off or a stretch is looked
 * at, opening until a cause is found that its proof does not refuse, found until it is repaired, repaired until
 * the job is closed.
 * @example
 * jobStage(sample.job.entries) // => 'testing'
 */
export function jobStage(entries: readonly JobEntry[]): JobStage {
  if (closingOf(entries)) return 'closed';
  if (foundLook(entries) && !isRefused(entries))
    return repairsSinceSearch(entries).length > 0 ? 'repaired' : 'found';
  const opened = entries.some((entry) => entry.type === 'panel-off' || entry.type === 'inspection');
  return opened ? 'opening' : 'testing';
}

/** Whether the cause last described since the search went on was asked for its proof, and not all of it holds. */
function isRefused(entries: readonly JobEntry[]): boolean {
  const cause = sinceSearch(entries, 'finding').findLast(({ result }) => result === 'proved-cause');
  return cause !== undefined && findProof(entries, cause.id) === 'refused';
}

/**
 * How a job ended; null while it is open.
 * @example
 * closingOf(sample.job.entries) // => null
 */
export function closingOf(entries: readonly JobEntry[]): EntryOf<'close'> | null {
  return entries.findLast((entry) => entry.type === 'close') ?? null;
}

/**
 * Entries of one type since the search last went on after a repair; all of them where it never did.
 * @example
 * sinceSearch(sample.job.entries, 'repair') // => []
 */
export function sinceSearch<T extends JobEntry['type']>(
  entries: readonly JobEntry[],
  type: T,
): readonly EntryOf<T>[] {
  const goesOn = entries.findLastIndex((entry) => entry.type === 'search-on');
  return entries.slice(goesOn + 1).filter((entry): entry is EntryOf<T> => entry.type === type);
}

const repairsSinceSearch = (entries: readonly JobEntry[]) => sinceSearch(entries, 'repair');
