import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Job, JobEntry } from '#core/job/job-document.ts';
import { standingEntries } from '#core/job/standing-entries.ts';
import { entryHistory } from '#renderer/session/entry-history.ts';
import { sample } from '#tests/sample.ts';

const at = '2026-01-05T10:00:00Z';
type EntryId = JobEntry['id'];
const note = (id: EntryId): JobEntry => ({ id, at, type: 'note', text: id });
const takeBack = (id: EntryId, entryId: EntryId): JobEntry => ({ id, at, type: 'take-back', entryId });
const jobWith = (...entries: JobEntry[]): Job => ({ ...sample.job, entries });

describe('undo and redo from the record alone', () => {
  test('an empty record has nothing to undo or redo', () => {
    expect(entryHistory(jobWith())).toEqual({ undo: null, redo: null });
  });

  test('the newest standing entry is undone first', () => {
    expect(entryHistory(jobWith(note('entry:a'), note('entry:b'))).undo).toBe('entry:b');
    const undone = jobWith(note('entry:a'), note('entry:b'), takeBack('entry:c', 'entry:b'));
    expect(entryHistory(undone)).toEqual({ undo: 'entry:a', redo: 'entry:c' });
  });

  test('a new entry ends what could be redone', () => {
    const job = jobWith(note('entry:a'), takeBack('entry:b', 'entry:a'), note('entry:c'));
    expect(entryHistory(job)).toEqual({ undo: 'entry:c', redo: null });
  });

  test('any walk of entering, undoing and redoing leaves exactly what undo and redo say', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom('enter', 'undo', 'redo'), { maxLength: 40 }), (walk) => {
        const entries: JobEntry[] = [];
        let done: EntryId[] = [];
        let undone: EntryId[] = [];
        for (const [i, step] of walk.entries()) {
          const id: EntryId = `entry:${i}`;
          const history = entryHistory(jobWith(...entries));
          if (step === 'enter') {
            entries.push(note(id));
            done.push(id);
            undone = [];
          } else if (step === 'undo' && history.undo) {
            entries.push(takeBack(id, history.undo));
            undone.push(done.pop() as EntryId);
          } else if (step === 'redo' && history.redo) {
            entries.push(takeBack(id, history.redo));
            done = [...done, undone.pop() as EntryId];
          }
          const standing = standingEntries(jobWith(...entries)).map((entry) => entry.id);
          expect(new Set(standing)).toEqual(new Set(done));
          expect(entryHistory(jobWith(...entries)).redo === null).toBe(undone.length === 0);
        }
      }),
      { seed: 733, numRuns: 150 },
    );
  });
});
