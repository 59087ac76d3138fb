import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Job, JobEntry } from '#core/job/job-document.ts';
import { standingEntries } from '#core/job/standing-entries.ts';
import { entryHistory } from '#renderer/session/entry-history.ts';
import { sample } from '#tests/sample.ts';

type EntryId = JobEntry['id'];
/** Every moment is another, except within one step. */
const atOf = (moment: number): string => new Date(Date.UTC(2026, 0, 5, 10, 0, moment)).toISOString();
const note = (id: EntryId, moment: number): JobEntry => ({ id, at: atOf(moment), type: 'note', text: id });
const takeBack = (id: EntryId, entryId: EntryId, moment: number): JobEntry => ({
  id,
  at: atOf(moment),
  type: 'take-back',
  entryId,
});
const jobWith = (...entries: readonly JobEntry[]): Job => ({ ...sample.job, entries: [...entries] });
const standingIn = (entries: readonly JobEntry[]): readonly EntryId[] =>
  standingEntries(jobWith(...entries)).map((entry) => entry.id);
/** The record after undo or redo was pressed. */
const pressed = (press: 'undo' | 'redo', entries: readonly JobEntry[], moment: number): JobEntry[] => [
  ...entries,
  ...entryHistory(jobWith(...entries))[press].map((id, i) =>
    takeBack(`entry:${press}-${moment}-${i}`, id, moment),
  ),
];

describe('undo and redo from the record alone', () => {
  test('an empty record has nothing to undo or redo', () => {
    expect(entryHistory(jobWith())).toEqual({ undo: [], redo: [] });
  });

  test('a look and the trim it was entered with are undone together, and redone together', () => {
    const off = (id: EntryId, panelId: 'panel:seat' | 'panel:tread'): JobEntry => ({
      id,
      at: atOf(2),
      type: 'panel-off',
      panelId,
    });
    const look = {
      ...({ type: 'inspection', stretches: [{ segmentId: 'segment:middle', fromMm: 0, toMm: 90 }] } as const),
      ...({ result: 'seen-sound', lookQuality: 0.9, note: '' } as const),
    };
    const before: JobEntry[] = [
      note('entry:a', 1),
      off('entry:b', 'panel:tread'),
      off('entry:c', 'panel:seat'),
      { id: 'entry:d', at: atOf(2), ...look, stretches: [...look.stretches] },
    ];
    expect(entryHistory(jobWith(...before)).undo).toEqual(['entry:d', 'entry:c', 'entry:b']);
    const undone = pressed('undo', before, 3);
    expect(standingIn(undone)).toEqual(['entry:a']);
    const redone = pressed('redo', undone, 4);
    expect(standingIn(redone)).toEqual(['entry:a', 'entry:b', 'entry:c', 'entry:d']);
    expect(standingIn(pressed('undo', redone, 5))).toEqual(['entry:a']);
  });

  test('trim ticked off before the look is a step of its own', () => {
    const off: JobEntry = { id: 'entry:a', at: atOf(1), type: 'panel-off', panelId: 'panel:seat' };
    expect(entryHistory(jobWith(off, note('entry:b', 1))).undo).toEqual(['entry:b']);
    expect(entryHistory(jobWith(off, { ...off, id: 'entry:b', at: atOf(2) })).undo).toEqual(['entry:b']);
  });

  test('the newest standing entry is undone first', () => {
    const two = [note('entry:a', 1), note('entry:b', 2)];
    expect(entryHistory(jobWith(...two)).undo).toEqual(['entry:b']);
    const undone = jobWith(...two, takeBack('entry:c', 'entry:b', 3));
    expect(entryHistory(undone)).toEqual({ undo: ['entry:a'], redo: ['entry:c'] });
  });

  test('a new entry ends what could be redone', () => {
    const job = jobWith(note('entry:a', 1), takeBack('entry:b', 'entry:a', 2), note('entry:c', 3));
    expect(entryHistory(job)).toEqual({ undo: ['entry:c'], redo: [] });
  });

  test('an entry put right is one thing done: undo brings the old one back, redo the new one', () => {
    for (const older of [[], [note('entry:later', 2)]]) {
      const before = [note('entry:a', 1), ...older];
      const right = [...before, takeBack('entry:t', 'entry:a', 5), note('entry:b', 5)];
      const undone = pressed('undo', right, 6);
      expect(standingIn(undone)).toEqual(standingIn(before));
      const redone = pressed('redo', undone, 7);
      expect(standingIn(redone)).toEqual(standingIn(right));
      const twice = pressed('undo', pressed('undo', redone, 8), 9);
      expect(standingIn(twice)).toEqual(standingIn(before).slice(0, -1));
    }
  });

  test('an older entry taken back by hand is brought back by undo', () => {
    const taken = [note('entry:a', 1), note('entry:b', 2), takeBack('entry:t', 'entry:a', 3)];
    const undone = pressed('undo', taken, 4);
    expect(standingIn(undone)).toEqual(['entry:a', 'entry:b']);
    expect(standingIn(pressed('redo', undone, 5))).toEqual(['entry:b']);
    expect(standingIn(pressed('undo', undone, 5))).toEqual(['entry:a']);
  });

  test('any walk of entering, putting right, taking back, undoing and redoing is undone step by step', () => {
    const steps = fc.tuple(
      fc.constantFrom('enter', 'put-right', 'take-back', 'undo', 'redo'),
      fc.nat({ max: 50 }),
    );
    fc.assert(
      fc.property(fc.array(steps, { maxLength: 40 }), (walk) => {
        let entries: JobEntry[] = [];
        const past: (readonly EntryId[])[] = [];
        let ahead: (readonly EntryId[])[] = [];
        for (const [i, [step, pick]] of walk.entries()) {
          const now = standingIn(entries);
          const chosen = now[pick % Math.max(1, now.length)];
          if (step === 'undo' || step === 'redo') {
            entries = pressed(step, entries, i);
            const [from, to] = step === 'undo' ? [past, ahead] : [ahead, past];
            const expected = from.pop();
            if (expected) to.push(now);
            expect(new Set(standingIn(entries))).toEqual(new Set(expected ?? now));
          } else {
            // The newest one taken back by hand is an undo; here it is another step of the walk.
            if (step === 'take-back' && (chosen === undefined || chosen === now.at(-1))) continue;
            if (step === 'put-right' && chosen === undefined) continue;
            past.push(now);
            ahead = [];
            if (step !== 'enter') entries.push(takeBack(`entry:${i}-t`, chosen as EntryId, i));
            if (step !== 'take-back') entries.push(note(`entry:${i}`, i));
          }
          const history = entryHistory(jobWith(...entries));
          expect(history.undo.length === 0).toBe(past.length === 0);
          expect(history.redo.length === 0).toBe(ahead.length === 0);
        }
      }),
      { seed: 733, numRuns: 300 },
    );
  });
});
