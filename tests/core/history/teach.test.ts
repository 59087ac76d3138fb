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
import { provedAt, refusedAt } from '#tests/core/job/proved-at.ts';
import { sample } from '#tests/sample.ts';

type Run = 'segment:middle' | 'segment:front';
const sawSound = (id: string, fromMm: number, toMm: number): JobEntry => ({
  id: `entry:${id}`,
  at: '2026-01-05T10:00:00Z',
  type: 'inspection',
  stretches: [{ segmentId: 'segment:middle', fromMm, toMm }],
  result: 'seen-sound',
  lookQuality: 0.9,
  note: '',
});
const proved = (fromMm: number, toMm: number, segmentId: Run = 'segment:middle') =>
  provedAt([{ segmentId, fromMm, toMm }], 'entry:a');
const jobWith = (...entries: JobEntry[]): Job => ({ ...sample.job, entries });
const past = (job: Job): PastJob => {
  const learnt = pastJob(sample.map, job);
  if (!learnt) throw new Error('the job teaches nothing');
  return learnt;
};
const total = (amounts: Readonly<Record<string, number | undefined>>) =>
  Object.values(amounts).reduce<number>((sum, each) => sum + (each ?? 0), 0);
const atEdge = past(jobWith(...proved(245, 255)));
const sound = past(jobWith(sawSound('a', 0, 500)));

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
    const elsewhere = past(jobWith(...proved(200, 300, 'segment:front')));
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
      entryId: 'entry:a-described',
    };
    const job = jobWith(...proved(245, 255), back);
    expect(pastJob(sample.map, job)).toBeNull();
    const left = pastJob(sample.map, jobWith(sawSound('b', 0, 500), ...proved(245, 255), back));
    expect(left).toEqual(sound);
  });

  test('a cause whose proof is missing or refused teaches nothing, neither a find nor a clean opening', () => {
    const place = [{ segmentId: 'segment:middle', fromMm: 245, toMm: 255 }] as const;
    const [onlySeen, described] = provedAt(place, 'entry:a');
    for (const entries of [[onlySeen], [onlySeen, described], refusedAt(place, 'entry:a')]) {
      expect(pastJob(sample.map, jobWith(...entries))).toBeNull();
      expect(pastJob(sample.map, jobWith(sawSound('b', 0, 500), ...entries))).toEqual(sound);
    }
  });

  test('wiring that may only be looked at is proved without moving it', () => {
    const place = [{ segmentId: 'segment:middle', fromMm: 245, toMm: 255 }] as const;
    const circuits = new Map([[sample.circuit.id, { ...sample.circuit, duty: 'restraint' as const }]]);
    const learnt = pastJob({ ...sample.map, circuits }, jobWith(...refusedAt(place, 'entry:a')));
    expect(total(learnt?.found.rubSpotKinds ?? {})).toBeGreaterThan(0.5);
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
    const job = jobWith(...proved(60, 80));
    const proposals = proposedRubSpots(sample.map, job);
    expect(proposals).toEqual([
      {
        entryId: 'entry:a-described',
        segmentId: 'segment:middle',
        stationMm: 70,
        at: { xMm: 570, yMm: 0, zMm: 0 },
      },
    ]);
    expect(proposedRubSpots(sample.map, jobWith(...proved(245, 255)))).toEqual([]);
    const [proposal] = proposals;
    if (!proposal) throw new Error('nothing was proposed');
    const patch = addRubSpot(sample.map, { rubSpot: proposedRubSpot(proposal, 'rub-spot:new') });
    if (!patch.ok) throw new Error(patch.problem.code);
    const drawn = applyPatch(sample.map, patch.value);
    if (!drawn.ok) throw new Error(drawn.problem.code);
    expect(proposedRubSpots(drawn.value, job)).toEqual([]);
  });
});
