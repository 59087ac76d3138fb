import { describe, expect, test } from 'vitest';
import type { Job, JobEntry } from '#core/job/job-document.ts';
import { putRight } from '#core/job/put-right.ts';
import { standingEntries } from '#core/job/standing-entries.ts';
import { sample } from '#tests/sample.ts';

const note = (id: `entry:${string}`, minute: number, text: string): JobEntry => ({
  id,
  at: `2026-01-05T10:${String(minute).padStart(2, '0')}:00Z`,
  type: 'note',
  text,
});
const back = (id: `entry:${string}`, minute: number, entryId: `entry:${string}`): JobEntry => ({
  id,
  at: `2026-01-05T10:${String(minute).padStart(2, '0')}:00Z`,
  type: 'take-back',
  entryId,
});
const jobWith = (...entries: readonly JobEntry[]): Job => ({ ...sample.job, entries: [...entries] });
const ids = (job: Job): readonly string[] => standingEntries(job).map(({ id }) => id);

describe('an entry put right', () => {
  const written = [
    note('entry:a', 1, '12 ohm'),
    note('entry:b', 2, 'bolster off'),
    note('entry:c', 3, 'sound'),
  ];
  const once = jobWith(...written, back('entry:x', 9, 'entry:a'), note('entry:a2', 9, '1.2 ohm'));

  test('stands where the first one stood, and knows when that was entered', () => {
    expect(ids(once)).toEqual(['entry:a2', 'entry:b', 'entry:c']);
    expect(putRight(once).get('entry:a2')?.at).toBe('2026-01-05T10:01:00Z');
  });

  test('put right twice, it still stands there', () => {
    const twice = jobWith(...once.entries, back('entry:y', 12, 'entry:a2'), note('entry:a3', 12, '1.3 ohm'));
    expect(ids(twice)).toEqual(['entry:a3', 'entry:b', 'entry:c']);
    expect(putRight(twice).get('entry:a3')?.id).toBe('entry:a');
  });

  test('undone, the first one stands again', () => {
    const undone = jobWith(...once.entries, back('entry:u', 14, 'entry:a2'), back('entry:v', 14, 'entry:x'));
    expect(ids(undone)).toEqual(['entry:a', 'entry:b', 'entry:c']);
  });

  test('taken back and entered anew a while later, it is another entry at the end', () => {
    const anew = jobWith(...written, back('entry:x', 9, 'entry:a'), note('entry:d', 11, '1.2 ohm'));
    expect(ids(anew)).toEqual(['entry:b', 'entry:c', 'entry:d']);
    expect(putRight(anew).size).toBe(0);
  });
});
