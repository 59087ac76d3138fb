import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { defaultAssumptions } from '#core/chafe/chafe-assumptions.ts';
import { emptyTally, type PastJob } from '#core/history/past-jobs.ts';
import { teach, withHistory } from '#core/history/teach.ts';
import { historyEffect } from '#core/job/history-effect.ts';
import type { Job, JobEntry } from '#core/job/job-document.ts';
import { pastJob } from '#core/job/past-job.ts';
import { proposedRubSpot, proposedRubSpots } from '#core/job/proposed-rub-spots.ts';
import { rank } from '#core/job/rank.ts';
import { addRubSpot } from '#core/map/commands/add-rub-spot.ts';
import { applyPatch } from '#core/map/patch.ts';
import { sample } from '#tests/sample.ts';

const look = (
  id: string,
  result: 'found' | 'seen-sound',
  fromMm: number,
  toMm: number,
  segmentId: 'segment:middle' | 'segment:front' = 'segment:middle',
): JobEntry => ({
  id: `entry:${id}`,
  at: '2026-01-05T10:00:00Z',
  type: 'inspection',
  stretches: [{ segmentId, fromMm, toMm }],
  result,
  lookQuality: 0.9,
  note: '',
});
const jobWith = (...entries: JobEntry[]): Job => ({ ...sample.job, entries });
const past = (job: Job): PastJob => {
  const learnt = pastJob(sample.map, job);
  if (!learnt) throw new Error('the job teaches nothing');
  return learnt;
};
const total = (amounts: Readonly<Record<string, number | undefined>>) =>
  Object.values(amounts).reduce<number>((sum, each) => sum + (each ?? 0), 0);
const atEdge = past(jobWith(look('a', 'found', 245, 255)));
const sound = past(jobWith(look('a', 'seen-sound', 0, 500)));

describe('what past jobs teach', () => {
  test('a find counts once, mostly for the edge it was found at; so does what was expected', () => {
    expect(total(atEdge.found.causes) + total(atEdge.found.rubSpotKinds)).toBeCloseTo(1, 9);
    expect(total(atEdge.expected.causes) + total(atEdge.expected.rubSpotKinds)).toBeCloseTo(1, 9);
    expect(atEdge.found.rubSpots['rub-spot:edge']).toBeGreaterThan(0.9);
  });

  test('a clean opening is exposure: it lowers the edge that was looked at', () => {
    expect(sound.found).toEqual(emptyTally);
    expect(teach([sound], sample.map).rubSpotFactor.get('rub-spot:edge')).toBeLessThan(1);
    expect(pastJob(sample.map, sample.job)).toBeNull();
  });

  test('two finds raise the edge, are told with it, and can be switched off', () => {
    const elsewhere = past(jobWith(look('a', 'found', 200, 300, 'segment:front')));
    const history = teach([elsewhere, elsewhere, elsewhere, sound], sample.map);
    const more = teach([elsewhere, elsewhere, elsewhere, sound, atEdge, atEdge], sample.map);
    expect(more.rubSpotFactor.get('rub-spot:edge')).toBeGreaterThan(
      history.rubSpotFactor.get('rub-spot:edge') ?? 1,
    );
    const effect = historyEffect(sample.map, sample.line, more).find(
      ({ thing }) => thing === 'rub-spot:edge',
    );
    expect(effect?.findsOnMap).toBe(2);
    expect(effect?.findsOfKind).toBe(2);
    expect(withHistory(defaultAssumptions, null)).toBe(defaultAssumptions);
    const told = rank(sample.map, sample.job, { history: more });
    const untold = rank(sample.map, sample.job, { history: null });
    if (!told.ok || !untold.ok) throw new Error('the sample ranks');
    expect(untold.value).toEqual((rank(sample.map, sample.job) as typeof untold).value);
    const figures = told.value.digPlan
      .flatMap(({ reason }) => reason.causes)
      .find(({ thing }) => thing === 'rub-spot:edge')?.figures;
    expect(figures?.timesFound).toBe(2);
    expect(told.value.posterior.stretches).not.toEqual(untold.value.posterior.stretches);
  });

  test('a find taken back teaches nothing any more, and the rates follow', () => {
    const back: JobEntry = {
      id: 'entry:back',
      at: '2026-01-05T11:00:00Z',
      type: 'take-back',
      entryId: 'entry:a',
    };
    const job = jobWith(look('a', 'found', 245, 255), back);
    expect(pastJob(sample.map, job)).toBeNull();
    const left = pastJob(
      sample.map,
      jobWith(look('b', 'seen-sound', 0, 500), look('a', 'found', 245, 255), back),
    );
    expect(left).toEqual(sound);
  });

  test('a car of another body style teaches the kind, not the spot', () => {
    const other: PastJob = {
      ...atEdge,
      mapId: 'map:van',
      found: { ...atEdge.found, rubSpots: { 'rub-spot:x': 1 } },
    };
    const expectedLess: PastJob = {
      ...other,
      expected: { ...other.expected, rubSpotKinds: { 'raw-edge': 0.2 } },
    };
    const history = teach([expectedLess, expectedLess], sample.map);
    expect(history.rubSpotKindFactor['raw-edge']).toBeGreaterThan(1);
    expect(history.rubSpotFactor.size).toBe(0);
    expect(history.jobs).toBe(2);
    expect(history.jobsOnMap).toBe(0);
  });

  test('more finds never lower a kind or spot, more clean openings never raise one', () => {
    const amount = fc.double({ min: 0.05, max: 1, noNaN: true });
    fc.assert(
      fc.property(fc.array(amount, { maxLength: 6 }), amount, (expectedOf, expected) => {
        const jobs = expectedOf.map(
          (e): PastJob => ({
            jobId: 'job:a',
            mapId: sample.map.id,
            found: { causes: {}, rubSpotKinds: { 'raw-edge': e }, rubSpots: { 'rub-spot:edge': e } },
            expected: { causes: {}, rubSpotKinds: { 'raw-edge': 0.4 }, rubSpots: { 'rub-spot:edge': 0.3 } },
          }),
        );
        const whole = (list: readonly PastJob[]) => {
          const { rubSpotKindFactor, rubSpotFactor } = teach(list, sample.map);
          return (rubSpotKindFactor['raw-edge'] ?? 1) * (rubSpotFactor.get('rub-spot:edge') ?? 1);
        };
        const find: PastJob = {
          jobId: 'job:b',
          mapId: sample.map.id,
          found: { causes: {}, rubSpotKinds: { 'raw-edge': 1 }, rubSpots: { 'rub-spot:edge': 1 } },
          expected: emptyTally,
        };
        const clean: PastJob = {
          ...find,
          found: emptyTally,
          expected: {
            causes: {},
            rubSpotKinds: { 'raw-edge': expected },
            rubSpots: { 'rub-spot:edge': expected },
          },
        };
        expect(whole([...jobs, find])).toBeGreaterThan(whole(jobs));
        expect(whole([...jobs, clean])).toBeLessThan(whole(jobs));
      }),
      { seed: 31 },
    );
  });

  test('a find where no spot is drawn proposes one, which then is drawn and proposes no more', () => {
    const job = jobWith(look('a', 'found', 60, 80));
    const proposals = proposedRubSpots(sample.map, job);
    expect(proposals).toEqual([
      { entryId: 'entry:a', segmentId: 'segment:middle', stationMm: 70, at: { xMm: 570, yMm: 0, zMm: 0 } },
    ]);
    expect(proposedRubSpots(sample.map, jobWith(look('a', 'found', 245, 255)))).toEqual([]);
    const [proposal] = proposals;
    if (!proposal) throw new Error('nothing was proposed');
    const patch = addRubSpot(sample.map, { rubSpot: proposedRubSpot(proposal, 'rub-spot:new') });
    if (!patch.ok) throw new Error(patch.problem.code);
    const drawn = applyPatch(sample.map, patch.value);
    if (!drawn.ok) throw new Error(drawn.problem.code);
    expect(proposedRubSpots(drawn.value, job)).toEqual([]);
  });
});
