import { expect, test } from 'vitest';
import type { JobEntry } from '#core/job/job-document.ts';
import { openBecause } from '#core/job/open-because.ts';
import { sample } from '#tests/sample.ts';

const at = { id: 'entry:a', at: '2026-01-05T09:00:00Z' } as const;
const treadOff: JobEntry = { ...at, type: 'panel-off', panelId: 'panel:tread' };
const seatOff: JobEntry = { ...at, type: 'panel-off', panelId: 'panel:seat' };
const lookAt = (fromMm: number, toMm: number) => ({ look: { segmentIds: [], parts: [], fromMm, toMm } });

test('a place with no panel marked over it is told apart from one whose panels are off', () => {
  expect(openBecause(sample.line, lookAt(1050, 1400), [])).toBe('nothing-over-it');
  expect(openBecause(sample.line, lookAt(1050, 1400), [treadOff])).toBe('nothing-over-it');
  expect(openBecause(sample.line, lookAt(100, 400), [treadOff])).toBe('off-now');
});

test('a place some of whose panels are still on is open only once those before it in the order are off', () => {
  expect(openBecause(sample.line, lookAt(650, 950), [treadOff])).toBe('off-by-then');
  expect(openBecause(sample.line, lookAt(650, 950), [treadOff, seatOff])).toBe('off-now');
});
