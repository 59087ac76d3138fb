import { describe, expect, test } from 'vitest';
import type { Job } from '#core/job/job-document.ts';
import { jobHazard } from '#core/job/job-hazard.ts';
import { rank, searchedLine } from '#core/job/rank.ts';
import { sample } from '#tests/sample.ts';

const looked: Job = {
  ...sample.job,
  entries: [
    {
      id: 'entry:look',
      at: '2026-01-05T10:00:00Z',
      type: 'inspection',
      stretches: [{ segmentId: 'segment:front', fromMm: 0, toMm: 500 }],
      result: 'seen-sound',
      lookQuality: 0.9,
      note: '',
    },
  ],
};

const edge = { ...sample.rubSpot, id: 'rub-spot:second' as const, points: [{ xMm: 250, yMm: 3, zMm: 0 }] };
const editedMap = { ...sample.map, rubSpots: new Map([...sample.map.rubSpots, [edge.id, edge] as const]) };

const hazardOf = (map: typeof sample.map, job: Job) => {
  const line = searchedLine(map, job);
  if (!line.ok) throw new Error(line.problem.code);
  return jobHazard(map, line.value, job, null);
};

describe('what a click does not change is not worked out again', () => {
  test('a look leaves the line and the hazard as they were, the very same ones', () => {
    const before = hazardOf(sample.map, sample.job);
    expect(searchedLine(sample.map, looked)).toBe(searchedLine(sample.map, sample.job));
    expect(hazardOf(sample.map, looked)).toBe(before);
  });

  test('an edited map, and work told at intake, are worked out afresh', () => {
    const before = hazardOf(sample.map, sample.job);
    expect(hazardOf(editedMap, sample.job).byClass).not.toEqual(before.byClass);
    expect(hazardOf(sample.map, { ...sample.job, recentWork: ['seat'] })).not.toBe(before);
  });

  test('what is kept answers as a map asked for the first time does', () => {
    rank(sample.map, sample.job);
    expect(rank(sample.map, looked)).toEqual(rank({ ...sample.map }, looked));
  });

  test('a circuit that cannot be searched stays refused with the same fault', () => {
    const broken = { ...sample.map, segments: new Map([...sample.map.segments].slice(0, 2)) };
    const refused = { ok: false, problem: { code: 'missing-reference' } };
    expect(searchedLine(broken, sample.job)).toMatchObject(refused);
    expect(searchedLine(broken, looked)).toMatchObject(refused);
  });
});
