import { expect, test } from 'vitest';
import type { EntryOf } from '#core/job/job-document.ts';
import { proofChecklist } from '#core/job/proof-checklist.ts';
import { reportWords } from '#renderer/language/report.ts';
import { retestLine } from '#renderer/places/close/retest-line.ts';
import { bare, ClosingRecord, causeFinding, place, toBody } from '#tests/core/job/closing-record.ts';
import { sample } from '#tests/sample.ts';

const state = { ...bare, apartNodeIds: [...bare.apartNodeIds] };
const record = new ClosingRecord();
const moved = (changed: number): EntryOf<'reading'> =>
  record.add('reading', {
    reading: { test: 'move', stretches: [...place], changed, tried: 10 },
    state,
    note: '',
  });
const ohms = (shown: number | 'open-line'): EntryOf<'reading'> =>
  record.add('reading', { reading: toBody(shown), state, note: '' });

const a = { still: moved(0), little: moved(1), most: moved(4), short: ohms(0.4), again: ohms(0.5) };
const { id: findingId } = record.add('finding', causeFinding);
record.add('repair', {
  findingId,
  practices: ['crimp-and-sealed-sleeve'],
  joints: 1,
  cures: ['edge-trim'],
  makerAllows: 'yes',
  photos: [],
  note: '',
});
const late = ohms('open-line');
const items = proofChecklist(sample.map, sample.line, record.entries);
const lineOf = (entry: EntryOf<'reading'>): string =>
  retestLine(entry, items, record.entries, ({ repeats }) => `again: ${repeats?.id ?? ''}`);

test('a move under which it changed is never said to have shown nothing', () => {
  expect(lineOf(a.still)).toBe(reportWords.notRepeated);
  expect(lineOf(a.little)).toBe(reportWords.movedWhereMost);
  expect(lineOf(a.most)).toBe(`again: ${a.most.id}`);
});

test('a test repeated before the repair has the same answer after it, one taken after it says so', () => {
  expect(lineOf(a.short)).toBe(lineOf(a.again));
  expect(lineOf(late)).toBe(reportWords.takenAfter);
});
