import { describe, expect, test } from 'vitest';
import { teach } from '#core/history/teach.ts';
import type { EntryOf, Job, JobEntry } from '#core/job/job-document.ts';
import { moveReason } from '#core/job/move-reason.ts';
import { pastJob } from '#core/job/past-job.ts';
import { planWishes } from '#core/job/plan-wishes.ts';
import { type RankJobOptions, rank } from '#core/job/rank.ts';
import { whatChanged } from '#core/job/rank-change.ts';
import { beginSensitivity, rankSensitivity } from '#core/job/rank-sensitivity.ts';
import { sample } from '#tests/sample.ts';
import { provedAt } from './proved-at.ts';

const at = '2026-01-05T10:00:00Z';
let count = 0;
const entry = <T extends JobEntry['type']>(type: T, fields: Omit<EntryOf<T>, 'id' | 'at' | 'type'>) =>
  ({ id: `entry:${count++}`, at, type, ...fields }) as unknown as JobEntry;

const jobWith = (...entries: readonly JobEntry[]): Job => ({ ...sample.job, entries: [...entries] });
const ranked = (job: Job, options: RankJobOptions = {}) => {
  const ranking = rank(sample.map, job, options);
  if (!ranking.ok) throw new Error(ranking.problem.code);
  return ranking.value;
};
const takenOff = (job: Job) => ranked(job).digPlan.flatMap(({ takeOff }) => takeOff);

const foundAtEdge = provedAt([{ segmentId: 'segment:middle', fromMm: 200, toMm: 300 }]);
const pastFinds = Array.from({ length: 2 }, (_, i) => {
  const past = pastJob(sample.map, { ...jobWith(...foundAtEdge), id: `job:past-${i}` });
  if (!past) throw new Error('a find teaches');
  return past;
});
const history = teach(pastFinds, sample.map);

describe('wishes for the plan, kept in the record', () => {
  const seatStays = entry('panel-wish', { panelId: 'panel:seat', wish: 'stays-on' });

  test('a panel that is to stay on is not taken off, and the chance left out is told', () => {
    expect(takenOff(jobWith())).toContain('panel:seat');
    const wished = ranked(jobWith(seatStays));
    expect(wished.digPlan.flatMap(({ takeOff }) => takeOff)).not.toContain('panel:seat');
    expect(wished.chanceLeftOut).toBeGreaterThan(0);
  });

  test('a later wish takes the place of an earlier one, and a wish taken back is gone', () => {
    const asPlanned = entry('panel-wish', { panelId: 'panel:seat', wish: 'as-planned' });
    expect(takenOff(jobWith(seatStays, asPlanned))).toEqual(takenOff(jobWith()));
    const undone = entry('take-back', { entryId: seatStays.id });
    expect(takenOff(jobWith(seatStays, undone))).toEqual(takenOff(jobWith()));
  });

  test('a panel that comes out anyway costs the search nothing', () => {
    const wished = ranked(jobWith(entry('panel-wish', { panelId: 'panel:seat', wish: 'out-anyway' })));
    expect(wished.expectedMinutes).toBeLessThan(ranked(jobWith()).expectedMinutes);
  });

  test('with minutes to keep to, the plan fits into them until the limit is lifted', () => {
    const box = entry('time-box', { minutes: 6 });
    const boxed = ranked(jobWith(box));
    expect(boxed.timeBox?.minutes).toBeLessThanOrEqual(6);
    expect(boxed.timeBox?.seen).toBeGreaterThan(0);
    expect(ranked(jobWith(box, entry('time-box', { minutes: null }))).timeBox).toBeUndefined();
  });

  test('a pair of panels stands once however it is named, until it is said not to do after all', () => {
    const pair = entry('either-panel', { panelIds: ['panel:seat', 'panel:tread'], either: true });
    const again = entry('either-panel', { panelIds: ['panel:tread', 'panel:seat'], either: true });
    const not = entry('either-panel', { panelIds: ['panel:seat', 'panel:tread'], either: false });
    expect(planWishes([pair, again]).eitherPanels).toEqual([['panel:tread', 'panel:seat']]);
    expect(planWishes([pair, again, not]).eitherPanels).toEqual([]);
  });

  test('a wish about a panel the map does not have is left out and named', () => {
    const strange = entry('panel-wish', { panelId: 'panel:gone', wish: 'stays-on' });
    const ranking = ranked(jobWith(strange));
    expect(ranking.digPlan).toEqual(ranked(jobWith()).digPlan);
    expect(ranking.warnings).toContainEqual(
      expect.objectContaining({ code: 'entry-ignored', entryId: strange.id }),
    );
  });
});

describe('what was told before the first reading', () => {
  const told = (job: Job) => ranked(job, { history, withTold: true });

  test('two finds at the edge raise the opening that shows it, and the chance without them is told', () => {
    const { digPlan, told: effects } = told(jobWith());
    const step = digPlan.find(({ takeOff }) => takeOff.includes('panel:seat'));
    const [past] = step?.told ?? [];
    expect(past?.told).toBe('past-jobs');
    expect(past?.without).toBeLessThan(step?.probability ?? 0);
    const without = ranked(jobWith()).digPlan.find(({ takeOff }) => takeOff.includes('panel:seat'));
    expect(past?.without).toBeCloseTo(without?.probability ?? 0, 9);
    expect(effects?.pastJobs).toMatchObject({ jobs: 2, jobsOnMap: 2 });
    expect(effects?.pastJobs?.effects[0]).toMatchObject({ thing: 'rub-spot:edge', findsOnMap: 2 });
  });

  test('switched off, past jobs change nothing, until switched on again', () => {
    const off = entry('past-jobs', { use: false });
    const { posterior } = ranked(jobWith(off), { history });
    expect(posterior).toEqual(ranked(jobWith()).posterior);
    expect(told(jobWith(off)).told?.pastJobs).toBeNull();
    const on = entry('past-jobs', { use: true });
    expect(ranked(jobWith(off, on), { history }).posterior).toEqual(ranked(jobWith(), { history }).posterior);
  });

  test('each answer says what it did on its own, and one that points nowhere says so', () => {
    const job: Job = { ...sample.job, recentWork: ['seat', 'audio'], symptoms: ['on-bumps'] };
    const { told: effects, digPlan } = ranked(job, { withTold: true });
    expect(effects?.answers.map(({ word }) => word)).toEqual(['seat', 'audio', 'on-bumps']);
    expect(effects?.answers.find(({ word }) => word === 'audio')?.lengthMm).toBe(0);
    const seat = digPlan.find(({ takeOff }) => takeOff.includes('panel:seat'));
    const without = new Map(seat?.told?.map((each) => [each.told, each.without]));
    expect(without.get('seat')).toBeLessThan(seat?.probability ?? 0);
    expect(without.get('audio')).toBeCloseTo(seat?.probability ?? 0, 9);
  });
});

test('how firm the openings are does not depend on how many draws are made at a time', () => {
  const begun = beginSensitivity(sample.map, jobWith(), { seed: 3, history });
  if (!begun.ok) throw new Error(begun.problem.code);
  for (const draws of [1, 5, 14]) begun.value.draw(draws);
  const whole = rankSensitivity(sample.map, jobWith(), { seed: 3, history, draws: 20 });
  expect(whole).toEqual({ ok: true, value: begun.value.soFar() });
});

describe('why an opening moved', () => {
  test('a look that found nothing made it less likely', () => {
    const before = ranked(jobWith());
    const after = ranked(
      jobWith(
        entry('inspection', {
          stretches: [{ segmentId: 'segment:rear', fromMm: 0, toMm: 500 }],
          result: 'seen-sound',
          lookQuality: 0.95,
          note: '',
        }),
      ),
    );
    const [down] = whatChanged(before, after).movedDown;
    if (!down) throw new Error('the open run drops');
    const reason = moveReason(before, after, down);
    expect(reason.why).toBe('less-likely');
    expect(reason.after).toBeLessThan(reason.before);
  });

  test('a panel that is off already made it quicker', () => {
    const before = ranked(jobWith());
    const after = ranked(jobWith(entry('panel-off', { panelId: 'panel:seat' })));
    const seatStep = before.digPlan.find(({ takeOff }) => takeOff.includes('panel:seat'));
    if (!seatStep) throw new Error('the seat is in the way');
    const reason = moveReason(before, after, { step: seatStep, before: seatStep.rank, after: 1 });
    expect(reason.why).toBe('quicker');
    expect(reason.after).toBeLessThan(reason.before);
  });
});
