import { describe, expect, test } from 'vitest';
import { rank } from '#core/job/rank.ts';
import type { RankOptions } from '#core/job/rank-on-line.ts';
import type { Ranking } from '#core/job/ranking.ts';
import { sample } from '#tests/sample.ts';

function ranked(options: RankOptions = {}): Ranking {
  const ranking = rank(sample.map, sample.job, options);
  if (!ranking.ok) throw new Error(ranking.problem.code);
  return ranking.value;
}

const takenOff = ({ digPlan }: Ranking): string[] => digPlan.flatMap(({ takeOff }) => takeOff);

describe('what the user may wish of the plan of a job', () => {
  test('with the seat not today nothing under it is planned, and its chance is told', () => {
    const plain = ranked();
    const pinned = ranked({ notToday: ['panel:seat'] });
    expect(takenOff(plain)).toContain('panel:seat');
    expect(takenOff(pinned)).not.toContain('panel:seat');
    expect(plain.chanceLeftOut).toBe(0);
    expect(pinned.chanceLeftOut).toBeGreaterThan(0.3);
    expect(pinned.posterior).toEqual(plain.posterior);
  });

  test('with the seat coming out anyway its minutes are not the search’s', () => {
    const free = ranked({ comingOutAnyway: ['panel:seat', 'panel:tread'] });
    expect(free.expectedMinutes).toBeLessThan(ranked().expectedMinutes);
    expect(free.digPlan.at(-1)?.runningMinutes).toBeCloseTo(
      (ranked().digPlan.at(-1)?.runningMinutes as number) - sample.seat.minutesOff - sample.tread.minutesOff,
      9,
    );
  });

  test('in five minutes only what fits is planned, with the chance and the most there could be', () => {
    const box = ranked({ timeBoxMinutes: 5 });
    expect(box.digPlan.at(-1)?.runningMinutes).toBeLessThanOrEqual(5);
    expect(takenOff(box)).not.toContain('panel:seat');
    expect(box.timeBox?.seen).toBeCloseTo(box.digPlan.at(-1)?.runningProbability as number, 9);
    expect(box.timeBox?.mostSeen).toBeCloseTo(box.timeBox?.seen as number, 9);
    expect(box.timeBox?.seen).toBeGreaterThan(0);
    expect(ranked().timeBox).toBeUndefined();
  });

  test('where tread or seat will do, the seat stays on', () => {
    const either = ranked({ eitherPanels: [['panel:tread', 'panel:seat']] });
    expect(takenOff(either)).toEqual(['panel:tread']);
    expect(either.expectedMinutes).toBeLessThan(ranked().expectedMinutes);
  });

  test('putting back raises the total and never the minutes until the find', () => {
    const back = ranked({ refit: true });
    expect(back.expectedTotalMinutes).toBeGreaterThan(back.expectedMinutes);
    expect(back.expectedTotalMinutes).toBeLessThanOrEqual(
      (ranked().expectedTotalMinutes as number) * (1 + 1e-9),
    );
    expect(back.expectedMinutes).toBeGreaterThanOrEqual(ranked().expectedMinutes * (1 - 1e-9));
  });

  test('asked for, each opening says what is lost by beginning there', () => {
    const steps = ranked({ regretSteps: 3 }).digPlan;
    expect(steps[0]).toMatchObject({ regretMinutes: 0, asGoodAsFirst: true });
    expect(steps[2]?.regretMinutes).toBeGreaterThanOrEqual(0);
    expect(steps[3]?.regretMinutes).toBeUndefined();
    expect(ranked().digPlan[0]?.regretMinutes).toBeUndefined();
  });

  test('the order told before is handed back and kept', () => {
    const before = ranked();
    const after = ranked({ keepOrder: before.lookOrder });
    expect(after.lookOrder).toEqual(before.lookOrder);
  });
});
