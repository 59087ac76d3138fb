import { expect, test } from 'vitest';
import type { Job, JobEntry } from '#core/job/job-document.ts';
import { proposedRubSpot, proposedRubSpots, undrawnFinds } from '#core/job/proposed-rub-spots.ts';
import { addRubSpot } from '#core/map/commands/add-rub-spot.ts';
import { applyPatch } from '#core/map/patch.ts';
import { sample } from '#tests/sample.ts';
import { provedAt } from './proved-at.ts';

const found = (
  id: `entry:${string}`,
  segmentId: `segment:${string}`,
  fromMm: number,
  toMm: number,
): readonly JobEntry[] => provedAt([{ segmentId, fromMm, toMm }], id);
const jobWith = (...entries: JobEntry[]): Job => ({ ...sample.job, entries });

test('a find beside a drawn spot proposes nothing, one away from any proposes its middle', () => {
  expect(proposedRubSpots(sample.map, jobWith(...found('entry:a', 'segment:middle', 230, 270)))).toEqual([]);
  expect(proposedRubSpots(sample.map, jobWith(...found('entry:b', 'segment:rear', 300, 340)))).toMatchObject([
    { entryId: 'entry:b-described', segmentId: 'segment:rear', stationMm: 320, at: { xMm: 1320 } },
  ]);
});

test('a spot added as proposed is proposed no more, and the same place twice is one', () => {
  const stretch = { segmentId: 'segment:rear' as const, fromMm: 300, toMm: 340 };
  const [proposal, ...others] = undrawnFinds(sample.map, [stretch, { ...stretch, fromMm: 310 }]);
  if (!proposal) throw new Error('a place without a spot');
  expect(others).toEqual([]);
  const patch = addRubSpot(sample.map, { rubSpot: proposedRubSpot(proposal, 'rub-spot:new') });
  if (!patch.ok) throw new Error(patch.problem.code);
  const drawn = applyPatch(sample.map, patch.value);
  if (!drawn.ok) throw new Error(drawn.problem.code);
  expect(undrawnFinds(drawn.value, [stretch])).toEqual([]);
});

test('a find taken back, or never proved, proposes nothing', () => {
  const find = found('entry:a', 'segment:rear', 300, 340);
  const at = '2026-01-05T11:00:00Z';
  const back: JobEntry = { id: 'entry:t', at, type: 'take-back', entryId: 'entry:a-described' };
  expect(proposedRubSpots(sample.map, jobWith(...find, back))).toEqual([]);
  expect(proposedRubSpots(sample.map, jobWith(...find.slice(0, 2)))).toEqual([]);
});
