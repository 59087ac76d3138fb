import type { EntryOf, JobEntry } from '#core/job/job-document.ts';
import { type ProofItem, testKey } from '#core/job/proof-checklist.ts';
import { reportWords as words } from '../../language/report.ts';

/**
 * What the report says beside a test of before: the try after the repair, in the words of `said`, or why there is
 * none. A test that was repeated before the repair is tried again once; of the moves, the one that showed most.
 */
export function retestLine(
  test: EntryOf<'reading'>,
  proof: readonly ProofItem[],
  entries: readonly JobEntry[],
  said: (item: ProofItem) => string,
): string {
  const lastRepair = entries.findLastIndex((entry) => entry.type === 'repair');
  if (entries.findIndex(({ id }) => id === test.id) > lastRepair) return words.takenAfter;
  const key = testKey(test);
  const item =
    proof.find(({ repeats }) => repeats?.id === test.id) ??
    proof.find(({ repeats }) => repeats && repeats.reading.test !== 'move' && testKey(repeats) === key);
  if (item) return said(item);
  if (test.reading.test === 'move' && test.reading.changed > 0) return words.movedWhereMost;
  return words.notRepeated;
}
