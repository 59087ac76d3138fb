import { describe, expect, test } from 'vitest';
import type { Look } from '#core/dig/look.ts';
import { planDig } from '#core/dig/plan-dig.ts';
import { seededChance } from '#core/quantity/chance.ts';
import { leastByTryingAll, leastOverSets, panelNamed, plainJobs, randomCar, table } from './small-cars.ts';

const none = new Set<never>();
const look = (id: string, probability: number, minutes: number, changes: Partial<Look> = {}): Look => ({
  id,
  panelIds: [],
  probability,
  quality: 1,
  minutes,
  ...changes,
});
const exactly = { stateLimit: 1_000_000 };

describe('the order of opening worked by hand', () => {
  test('three open places of chance 0.5, 0.3, 0.2 and 10, 3, 5 minutes: B, A, C in 11.0 minutes', () => {
    const plan = planDig([look('A', 0.5, 10), look('B', 0.3, 3), look('C', 0.2, 5)], new Map(), none);
    expect(plan.openings.flatMap((opening) => opening.looks.map(({ id }) => id))).toEqual(['B', 'A', 'C']);
    expect(plan.expectedMinutes).toBeCloseTo(11.0, 12);
  });

  test('a panel two places share is charged once, so together they beat a likelier single place', () => {
    const panels = table([panelNamed('panel:sill', 10), panelNamed('panel:tail', 10)]);
    const looks = [
      look('sill front', 0.3, 1, { panelIds: ['panel:sill'] }),
      look('sill rear', 0.3, 1, { panelIds: ['panel:sill'] }),
      look('tail', 0.4, 1, { panelIds: ['panel:tail'] }),
    ];
    const plan = planDig(looks, panels, none);
    expect(plan.openings[0]?.takeOff).toEqual(['panel:sill']);
    expect(plan.expectedMinutes).toBeCloseTo(0.3 * 11 + 0.3 * 12 + 0.4 * 23, 12);
  });

  test('a poor look in an open place waits until a better place has been opened', () => {
    const panels = table([panelNamed('panel:sill', 1), panelNamed('panel:tail', 2)]);
    const looks = [
      look('sill likely', 0.5, 1, { panelIds: ['panel:sill'] }),
      look('sill poor', 0.02, 5, { panelIds: ['panel:sill'] }),
      look('tail', 0.48, 1, { panelIds: ['panel:tail'] }),
    ];
    const plan = planDig(looks, panels, none);
    const order = plan.openings.flatMap((opening) => opening.looks.map(({ id }) => id));
    expect(order).toEqual(['sill likely', 'tail', 'sill poor']);
    expect(plan.openings.at(-1)?.takeOff).toEqual([]);
  });

  test('what must come off first comes off first and is charged', () => {
    const panels = table([panelNamed('panel:seat', 15, ['panel:tread']), panelNamed('panel:tread', 3)]);
    const plan = planDig([look('floor', 1, 2, { panelIds: ['panel:seat'] })], panels, none);
    expect(plan.openings[0]?.takeOff).toEqual(['panel:tread', 'panel:seat']);
    expect(plan.openings[0]?.minutes).toBe(20);
  });

  test('a panel that is off already costs nothing, nor does what it once needed', () => {
    const panels = table([panelNamed('panel:seat', 15, ['panel:tread']), panelNamed('panel:tread', 3)]);
    const plan = planDig(
      [look('floor', 1, 2, { panelIds: ['panel:seat'] })],
      panels,
      new Set(['panel:seat'] as const),
    );
    expect(plan.openings[0]?.takeOff).toEqual([]);
    expect(plan.expectedMinutes).toBe(2);
  });

  test('a place overlooked once is looked at again later in the plan', () => {
    const plan = planDig(
      [look('A', 0.9, 2, { quality: 0.5 }), look('B', 0.1, 1, { quality: 0.5 })],
      new Map(),
      none,
    );
    const rounds = plan.openings.map(({ looks, again }) => [looks.map(({ id }) => id).join(), again]);
    expect(rounds).toEqual([
      ['A', false],
      ['A', true],
      ['B', false],
      ['B', true],
    ]);
  });

  test('equal places come in the order of their names, whatever order they are given in', () => {
    const looks = ['d', 'b', 'a', 'c'].map((id) => look(id, 0.25, 2));
    const names = (given: readonly Look[]) =>
      planDig(given, new Map(), none).openings.flatMap((opening) => opening.looks.map(({ id }) => id));
    expect(names(looks)).toEqual(['a', 'b', 'c', 'd']);
    expect(names([...looks].reverse())).toEqual(['a', 'b', 'c', 'd']);
  });

  test('nothing to look at makes an empty plan', () => {
    expect(planDig([look('A', 0, 2)], new Map(), none)).toMatchObject({
      openings: [],
      expectedMinutes: 0,
      expectedTotalMinutes: 0,
      lowerBoundMinutes: 0,
      proved: true,
      gap: 0,
    });
  });
});

describe('the proved order against other ways of finding the best', () => {
  test('equals the best of all orders tried one by one, on 150 random cars of 7 to 9 jobs', () => {
    const chance = seededChance(11);
    for (let i = 0; i < 150; i++) {
      const panelCount = 1 + Math.floor(chance() * 3);
      const car = randomCar(chance, panelCount, 3, 2);
      const plan = planDig(car.looks, car.panels, none, exactly);
      expect(plan.proved).toBe(true);
      expect(plan.expectedMinutes).toBeCloseTo(leastByTryingAll(plainJobs(car)), 9);
    }
  });

  test('equals a dynamic programme over sets of finished jobs, on 200 random cars of up to 17 jobs', () => {
    const chance = seededChance(12);
    for (let i = 0; i < 200; i++) {
      const panelCount = 1 + Math.floor(chance() * 5);
      const car = randomCar(chance, panelCount, 2 + Math.floor(chance() * 5), 3);
      const plan = planDig(car.looks, car.panels, none, exactly);
      expect(plan.proved).toBe(true);
      expect(plan.expectedMinutes).toBeCloseTo(leastOverSets(plainJobs(car)), 9);
      expect(plan.lowerBoundMinutes).toBeCloseTo(plan.expectedMinutes, 9);
    }
  });

  test('without the exact search the order stays within 2 percent of the best, and the bound stays below it', () => {
    const chance = seededChance(13);
    let sum = 0;
    const cars = 100;
    for (let i = 0; i < cars; i++) {
      const car = randomCar(chance, 3 + Math.floor(chance() * 3), 6, 2);
      const quick = planDig(car.looks, car.panels, none, { stateLimit: 0 });
      const best = leastOverSets(plainJobs(car));
      expect(quick.lowerBoundMinutes).toBeLessThanOrEqual(best * (1 + 1e-9));
      expect(quick.expectedMinutes).toBeGreaterThanOrEqual(best * (1 - 1e-9));
      expect(quick.expectedMinutes).toBeLessThanOrEqual(best * 1.02);
      sum += quick.expectedMinutes / best;
    }
    expect(sum / cars).toBeLessThan(1.002);
  });
});

describe('Smith’s rule', () => {
  /**
   * Weighted shortest processing time first (W. E. Smith, "Various optimizers for single-stage
   * production", Naval Research Logistics Quarterly 3, 1956). Figures by hand: minutes 3, 1, 2 and
   * weights 1, 2, 3 give ratios 1/3, 2, 3/2, so the order is 2, 3, 1 and the sum is 2*1 + 3*3 + 1*6 = 17.
   */
  test('three jobs of 3, 1, 2 minutes and weights 1, 2, 3 sum to 17', () => {
    const looks = [look('1', 1 / 6, 3), look('2', 2 / 6, 1), look('3', 3 / 6, 2)];
    const plan = planDig(looks, new Map(), none);
    expect(plan.openings.flatMap((opening) => opening.looks.map(({ id }) => id))).toEqual(['2', '3', '1']);
    expect(plan.expectedMinutes * 6).toBeCloseTo(17, 12);
  });
});
