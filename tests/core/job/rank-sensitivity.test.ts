import { describe, expect, test } from 'vitest';
import { defaultAssumptions } from '#core/chafe/chafe-assumptions.ts';
import { drawnAssumptions, drawnConstant } from '#core/chafe/uncertain-constants.ts';
import type { JobEntry } from '#core/job/job-document.ts';
import { rank } from '#core/job/rank.ts';
import { rankSensitivity } from '#core/job/rank-sensitivity.ts';
import { seededChance } from '#core/quantity/chance.ts';
import { sample } from '#tests/sample.ts';

const told = (...args: Parameters<typeof rankSensitivity>) => {
  const answer = rankSensitivity(...args);
  if (!answer.ok) throw new Error(answer.problem.code);
  return answer.value;
};

describe('how firm the first openings are', () => {
  test('the same seed gives the same answer, and shares lie between nothing and all', () => {
    const options = { draws: 60, seed: 4 };
    const first = told(sample.map, sample.job, options);
    expect(told(sample.map, sample.job, options)).toEqual(first);
    expect(first.length).toBeGreaterThan(0);
    for (const { opening, rival, standing } of first) {
      const both = opening.share + (rival?.share ?? 0);
      expect(opening.share).toBeGreaterThanOrEqual(0);
      expect(both).toBeLessThanOrEqual(1 + 1e-12);
      if (standing === 'firm') expect(opening.share).toBeGreaterThanOrEqual(0.8);
      if (standing === 'either') expect(both).toBeGreaterThanOrEqual(0.8);
    }
  });

  test('without draws it tells of the plan that is shown', () => {
    const ranking = rank(sample.map, sample.job);
    if (!ranking.ok) throw new Error(ranking.problem.code);
    const openings = told(sample.map, sample.job, { draws: 0 }).map(({ opening }) => opening.takeOff);
    expect(openings).toEqual(ranking.value.digPlan.slice(0, 3).map(({ takeOff }) => takeOff));
  });

  test('with only so many minutes it tells of what is chosen to fit into them', () => {
    const limit: JobEntry = { id: 'entry:limit', at: '2026-01-05T10:00:00Z', type: 'time-box', minutes: 12 };
    const job = { ...sample.job, entries: [limit] };
    const ranking = rank(sample.map, job, { timeBoxMinutes: 12 });
    if (!ranking.ok) throw new Error(ranking.problem.code);
    const { digPlan } = ranking.value;
    expect(digPlan.length).toBeGreaterThan(0);
    expect(told(sample.map, job, { draws: 0 }).map(({ opening }) => opening.takeOff)).toEqual(
      digPlan.slice(0, 3).map(({ takeOff }) => takeOff),
    );
    for (const { standing, opening } of told(sample.map, job, { draws: 20, seed: 3 })) {
      if (standing === 'firm') expect(opening.share).toBeGreaterThanOrEqual(0.8);
    }
  });

  test('a find settles where to look first, whatever the constants', () => {
    const found: JobEntry = {
      id: 'entry:found',
      at: '2026-01-05T10:00:00Z',
      type: 'inspection',
      stretches: [{ segmentId: 'segment:middle', fromMm: 200, toMm: 300 }],
      result: 'found',
      lookQuality: 0.9,
      note: '',
    };
    const [first] = told(sample.map, { ...sample.job, entries: [found] }, { draws: 60, seed: 2 });
    expect(first?.standing).toBe('firm');
  });

  test('what cannot be ranked cannot be told firm', () => {
    expect(rankSensitivity(sample.map, { ...sample.job, circuitId: null })).toMatchObject({
      problem: { code: 'job-circuit-unset' },
    });
  });

  test('two draws in three of a constant stay within its factor', () => {
    const chance = seededChance(9);
    let within = 0;
    for (let i = 0; i < 3_000; i++) {
      const drawn = drawnConstant(5, { within: 2 }, chance);
      if (drawn > 2.5 && drawn < 10) within++;
    }
    expect(within / 3_000).toBeCloseTo(0.683, 1);
    const drawn = drawnAssumptions(chance);
    expect(drawn.edgeSeverity.burr).not.toBe(defaultAssumptions.edgeSeverity.burr);
    expect(drawn.longestCellMm).toBe(defaultAssumptions.longestCellMm);
  });
});
