import { describe, expect, test } from 'vitest';
import type { Look } from '#core/dig/look.ts';
import { planDig } from '#core/dig/plan-dig.ts';
import { planWithin } from '#core/dig/plan-within.ts';
import { offClosure } from '#core/map/panel-order.ts';
import type { Panel } from '#core/map/records.ts';
import { type Chance, seededChance } from '#core/quantity/chance.ts';
import type { PanelId } from '#core/quantity/id.ts';
import { carShaped } from './car-shaped.ts';
import {
  leastOverSets,
  type PlainJob,
  panelNamed,
  plainJobs,
  randomCar,
  type SmallCar,
  table,
} from './small-cars.ts';

const none = new Set<never>();
const exactly = { stateLimit: 1_000_000 };
const look = (id: string, probability: number, minutes: number, changes: Partial<Look> = {}): Look => ({
  id,
  panelIds: [],
  probability,
  quality: 1,
  minutes,
  ...changes,
});
const names = (plan: { openings: readonly { looks: readonly Look[] }[] }): string[] =>
  plan.openings.flatMap(({ looks }) => looks.map(({ id }) => id));

describe('what stays on and what comes off anyway', () => {
  const panels = table([
    panelNamed('panel:lining', 40),
    panelNamed('panel:seat', 15),
    panelNamed('panel:sill', 5),
  ]);
  const looks = [
    look('roof', 0.6, 2, { panelIds: ['panel:lining'] }),
    look('floor', 0.3, 2, { panelIds: ['panel:seat'] }),
    look('sill', 0.1, 2, { panelIds: ['panel:sill'] }),
  ];

  test('with the headlining not today, its places are left out and said to be', () => {
    const plan = planDig(looks, panels, none, { notToday: ['panel:lining'] });
    expect(names(plan).sort()).toEqual(['floor', 'sill']);
    expect(plan.leftOut.map(({ id }) => id)).toEqual(['roof']);
    expect(plan.openings.flatMap(({ takeOff }) => takeOff)).not.toContain('panel:lining');
  });

  test('a place behind a panel that waits for one that stays on is left out too', () => {
    const waiting = table([panelNamed('panel:tread', 3), panelNamed('panel:seat', 15, ['panel:tread'])]);
    const plan = planDig([look('floor', 1, 2, { panelIds: ['panel:seat'] })], waiting, none, {
      notToday: ['panel:tread'],
    });
    expect(plan.openings).toEqual([]);
    expect(plan.leftOut).toHaveLength(1);
  });

  test('a panel that is off already may stay off, whatever is pinned', () => {
    const plan = planDig(looks, panels, new Set(['panel:lining'] as const), { notToday: ['panel:lining'] });
    expect(plan.leftOut).toEqual([]);
    expect(names(plan)[0]).toBe('roof');
  });

  test('with the seat coming out anyway, the floor is looked at first and its minutes are not charged', () => {
    const plan = planDig(looks, panels, none, { comingOutAnyway: ['panel:seat'] });
    expect(names(plan)[0]).toBe('floor');
    expect(plan.openings[0]).toMatchObject({ takeOff: ['panel:seat'], minutes: 2 });
  });
});

describe('putting back', () => {
  const quickOff = { ...panelNamed('panel:glued', 4), minutesOn: 60 };
  const even = { ...panelNamed('panel:clipped', 6), minutesOn: 6 };
  const panels = table([quickOff, even]);
  const looks = [
    look('glued', 0.5, 1, { panelIds: ['panel:glued'] }),
    look('clipped', 0.5, 1, { panelIds: ['panel:clipped'] }),
  ];

  test('a panel quick to take off but long to put back comes first, unless putting back is counted', () => {
    expect(names(planDig(looks, panels, none))).toEqual(['glued', 'clipped']);
    expect(names(planDig(looks, panels, none, { refit: true }))).toEqual(['clipped', 'glued']);
  });

  test('it is charged in the total and never before the find', () => {
    const plan = planDig(looks, panels, none, { refit: true });
    expect(plan.openings.map(({ minutes }) => minutes)).toEqual([7, 5]);
    expect(plan.expectedMinutes).toBeCloseTo((7 + 12) / 2, 12);
    expect(plan.expectedTotalMinutes).toBeCloseTo((7 + 6 + 12 + 66) / 2, 12);
    expect(plan.lowerBoundMinutes).toBeCloseTo(plan.expectedTotalMinutes, 12);
  });

  test('equals the best order with both minutes as the panel’s length, on 60 random cars', () => {
    const chance = seededChance(31);
    for (let i = 0; i < 60; i++) {
      const car = randomCar(chance, 4, 5, 2);
      const both = { ...car, panels: new Map([...car.panels].map(([id, p]) => [id, withBoth(p)] as const)) };
      const plan = planDig(car.looks, car.panels, none, { ...exactly, refit: true });
      expect(plan.expectedTotalMinutes).toBeCloseTo(leastOverSets(plainJobs(both)), 9);
    }
  });
});

const withBoth = (panel: Panel): Panel => ({ ...panel, minutesOff: panel.minutesOff + panel.minutesOn });

describe('either of two panels will do', () => {
  test('the cheaper way in is taken, and the dearer one when it is off already', () => {
    const panels = table([panelNamed('panel:arch', 25), panelNamed('panel:boot', 6)]);
    const both = look('tail', 1, 2, { panelIds: ['panel:arch'], otherAccess: [['panel:boot']] });
    expect(planDig([both], panels, none).openings[0]?.takeOff).toEqual(['panel:boot']);
    expect(planDig([both], panels, new Set(['panel:arch'] as const)).openings[0]?.takeOff).toEqual([]);
    expect(planDig([both], panels, none, { notToday: ['panel:boot'] }).openings[0]?.takeOff).toEqual([
      'panel:arch',
    ]);
  });

  test('a dearer way in is taken where it shows other places as well', () => {
    const panels = table([panelNamed('panel:arch', 8), panelNamed('panel:boot', 6)]);
    const looks = [
      look('tail', 0.5, 1, { panelIds: ['panel:boot'], otherAccess: [['panel:arch']] }),
      look('wheel', 0.5, 1, { panelIds: ['panel:arch'] }),
    ];
    const plan = planDig(looks, panels, none);
    expect(plan.openings.flatMap(({ takeOff }) => takeOff)).toEqual(['panel:arch']);
    expect(plan.proved).toBe(true);
  });

  test('equals the best over all ways tried one by one, on 80 random cars', () => {
    const chance = seededChance(32);
    for (let i = 0; i < 80; i++) {
      const car = withOtherWays(randomCar(chance, 4, 5, 2), chance);
      const plan = planDig(car.looks, car.panels, none, exactly);
      const best = Math.min(...allAccesses(car).map((each) => leastOverSets(plainJobs(each))));
      expect(plan.proved).toBe(true);
      expect(plan.expectedMinutes).toBeCloseTo(best, 9);
    }
  });
});

function withOtherWays(car: SmallCar, chance: Chance): SmallCar {
  const ids = [...car.panels.keys()];
  return {
    ...car,
    looks: car.looks.map((each) => {
      if (chance() < 0.5) return each;
      return { ...each, otherAccess: [[ids[Math.floor(chance() * ids.length)] as PanelId]] };
    }),
  };
}

function allAccesses(car: SmallCar): SmallCar[] {
  let ways: Look[][] = [[]];
  for (const each of car.looks) {
    ways = ways.flatMap((before) =>
      [each.panelIds, ...(each.otherAccess ?? [])].map((panelIds) => [...before, { ...each, panelIds }]),
    );
  }
  return ways.map((looks) => ({ ...car, looks }));
}

describe('a place half seen past a panel', () => {
  const panels = table([panelNamed('panel:trim', 30), panelNamed('panel:lid', 2)]);
  const half = { panelIds: ['panel:lid' as const], quality: 0.6, minutes: 1 };

  test('the cheap half view comes first, and the rest of the chance waits for the full look', () => {
    const plan = planDig([look('pillar', 1, 3, { panelIds: ['panel:trim'], halfView: half })], panels, none);
    expect(plan.openings.map(({ half: isHalf, takeOff, seen }) => [isHalf ?? false, takeOff, seen])).toEqual([
      [true, ['panel:lid'], 0.6],
      [false, ['panel:trim'], 0.4],
    ]);
    expect(plan.expectedMinutes).toBeCloseTo(0.6 * 3 + 0.4 * 36, 12);
    expect(plan.proved).toBe(true);
  });

  test('a half view that hardly shows anything is not taken', () => {
    const poor = { ...half, quality: 0.01, minutes: 5 };
    const plan = planDig([look('pillar', 1, 3, { panelIds: ['panel:trim'], halfView: poor })], panels, none);
    expect(plan.openings.map(({ half: isHalf }) => isHalf ?? false)).toEqual([false]);
    expect(plan.expectedMinutes).toBe(33);
  });

  test('with the trim to stay on, the half view is all there is', () => {
    const pillar = look('pillar', 1, 3, { panelIds: ['panel:trim'], halfView: half });
    const plan = planDig([pillar], panels, none, { notToday: ['panel:trim'] });
    expect(plan.openings).toHaveLength(1);
    expect(plan.openings[0]).toMatchObject({ half: true, takeOff: ['panel:lid'], seen: 0.6 });
  });

  test('equals the best over which places are half seen first, on 30 random cars', () => {
    const chance = seededChance(36);
    let proved = 0;
    for (let i = 0; i < 30; i++) {
      const car = randomCar(chance, 3, 3, 2);
      const looks = car.looks.map((each) => ({
        ...each,
        // Every other car has half views that may be nearly as good as the full look.
        halfView: {
          panelIds: each.panelIds.slice(1),
          quality: each.quality * chance() * (i % 2 === 0 ? each.quality : 1),
          minutes: 0.5,
        },
      }));
      const plan = planDig(looks, car.panels, none, exactly);
      const least = Math.min(
        ...[0, 1, 2, 3, 4, 5, 6, 7].map((taken) =>
          leastOverSets(withHalfViews({ ...car, looks }, (at) => (taken & (1 << at)) !== 0)),
        ),
      );
      expect(plan.expectedMinutes).toBeGreaterThanOrEqual(least * (1 - 1e-9));
      expect(plan.lowerBoundMinutes).toBeLessThanOrEqual(least * (1 + 1e-9));
      if (!plan.proved) continue;
      proved++;
      expect(plan.expectedMinutes).toBeCloseTo(least, 9);
    }
    expect(proved).toBeGreaterThan(10);
  });

  test('never costs more than doing without, and the bound stays below, on 80 random cars', () => {
    const chance = seededChance(33);
    for (let i = 0; i < 80; i++) {
      const car = randomCar(chance, 4, 5, 2);
      const looks = car.looks.map((each) => {
        if (chance() < 0.4 || each.panelIds.length === 0) return each;
        return {
          ...each,
          halfView: { panelIds: each.panelIds.slice(1), quality: 0.3 * chance() + 0.1, minutes: 1 },
        };
      });
      const plan = planDig(looks, car.panels, none, exactly);
      const without = planDig(car.looks, car.panels, none, exactly);
      expect(plan.expectedMinutes).toBeLessThanOrEqual(without.expectedMinutes * (1 + 1e-9));
      expect(plan.lowerBoundMinutes).toBeLessThanOrEqual(plan.expectedMinutes * (1 + 1e-9));
      const seen = plan.openings.reduce((sum, opening) => sum + opening.seen, 0);
      expect(seen).toBeCloseTo(
        without.openings.reduce((sum, opening) => sum + opening.seen, 0),
        6,
      );
    }
  });
});

/** The plain jobs with a half view before the full look where `isTaken`; what it shows the full look does not show again. */
function withHalfViews(car: SmallCar, isTaken: (look: number) => boolean): PlainJob[] {
  const numbers = new Map([...car.panels.keys()].map((id, i) => [id, i]));
  const jobs = plainJobs(car);
  car.looks.forEach((each, at) => {
    const half = each.halfView;
    if (!half || !isTaken(at)) return;
    const full = car.panels.size + 2 * at;
    const weight = each.probability * Math.min(each.quality, half.quality);
    const before = jobs[full] as PlainJob;
    jobs[full] = { ...before, weight: before.weight - weight, after: [...before.after, jobs.length] };
    jobs.push({
      weight,
      minutes: half.minutes,
      after: half.panelIds.map((id) => numbers.get(id) as number),
    });
  });
  return jobs;
}

describe('what can be seen in a given time', () => {
  test('in 20 minutes the sill and the open run, not the seat', () => {
    const panels = table([panelNamed('panel:seat', 19), panelNamed('panel:sill', 6)]);
    const looks = [
      look('under seat', 0.6, 3, { panelIds: ['panel:seat'] }),
      look('sill', 0.25, 2, { panelIds: ['panel:sill'] }),
      look('open', 0.15, 4),
    ];
    const box = planWithin(looks, panels, none, 20);
    expect(names(box).sort()).toEqual(['open', 'sill']);
    expect(box.minutes).toBe(12);
    expect(box.seen).toBeCloseTo(0.4, 12);
    expect(box.proved).toBe(true);
    expect(names(planWithin(looks, panels, none, 22))).toEqual(['under seat']);
  });

  test('nothing fits into no time, and all of it into plenty', () => {
    const car = randomCar(seededChance(5), 4, 6, 2);
    expect(
      planWithin(
        car.looks.map((each) => ({ ...each, panelIds: ['panel:p0' as const] })),
        car.panels,
        none,
        0.5,
      ).openings,
    ).toEqual([]);
    const all = planDig(car.looks, car.panels, none);
    const box = planWithin(car.looks, car.panels, none, 10_000);
    expect(box.seen).toBeCloseTo(
      all.openings.reduce((sum, { seen }) => sum + seen, 0),
      9,
    );
  });

  test('equals the best of all choices tried one by one, on 80 random cars', () => {
    const chance = seededChance(34);
    for (let i = 0; i < 80; i++) {
      const car = randomCar(chance, 4, 5, 2);
      const minutes = 5 + chance() * 40;
      const box = planWithin(car.looks, car.panels, none, minutes);
      expect(box.proved).toBe(true);
      expect(box.minutes).toBeLessThanOrEqual(minutes + 1e-9);
      expect(box.seen).toBeCloseTo(mostByTryingAll(car, minutes), 9);
    }
  });

  test('with a small limit the most that could be seen is told and true', () => {
    const chance = seededChance(35);
    for (let i = 0; i < 20; i++) {
      const car = carShaped(chance, 14, 40);
      const rough = planWithin(car.looks, car.panels, none, 60, { stateLimit: 2 });
      const fine = planWithin(car.looks, car.panels, none, 60);
      expect(rough.minutes).toBeLessThanOrEqual(60 + 1e-9);
      expect(rough.mostSeen).toBeGreaterThanOrEqual(fine.seen - 1e-9);
      expect(fine.seen).toBeGreaterThanOrEqual(rough.seen - 1e-9);
    }
  });
});

/** Each look is left out, taken once or taken twice. */
function mostByTryingAll({ looks, panels }: SmallCar, minutes: number): number {
  let most = 0;
  const go = (at: number, wanted: readonly PanelId[], spent: number, seen: number): void => {
    if (spent > minutes) return;
    if (at === looks.length) {
      let trim = 0;
      for (const id of offClosure(panels, wanted)) trim += panels.get(id)?.minutesOff ?? 0;
      if (trim + spent <= minutes) most = Math.max(most, seen);
      return;
    }
    const { panelIds, probability, quality, minutes: each } = looks[at] as Look;
    const first = probability * quality;
    const needs = [...wanted, ...panelIds];
    go(at + 1, wanted, spent, seen);
    go(at + 1, needs, spent + each, seen + first);
    go(at + 1, needs, spent + 2 * each, seen + first * (2 - quality));
  };
  go(0, [], 0, 0);
  return most;
}
