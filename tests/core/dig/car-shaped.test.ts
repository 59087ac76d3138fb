import { describe, expect, test } from 'vitest';
import type { Look } from '#core/dig/look.ts';
import { planDig } from '#core/dig/plan-dig.ts';
import { seededChance } from '#core/quantity/chance.ts';
import type { PanelId } from '#core/quantity/id.ts';
import { carShaped } from './car-shaped.ts';
import type { SmallCar } from './small-cars.ts';

/** Mean minutes when every look of an opened place is taken at once and places go by a simple rule. */
function simpleRule(car: SmallCar, ruleOf: (probability: number, minutes: number) => number): number {
  const off = new Set<PanelId>();
  const left = new Set(car.looks);
  let minutes = 0;
  let cost = 0;
  let weight = 0;
  const needs = (ids: readonly PanelId[], into = new Set<PanelId>()): Set<PanelId> => {
    for (const id of ids) {
      if (off.has(id) || into.has(id)) continue;
      into.add(id);
      needs(car.panels.get(id)?.offFirst ?? [], into);
    }
    return into;
  };
  const minutesOf = (ids: Iterable<PanelId>) =>
    [...ids].reduce((sum, id) => sum + (car.panels.get(id)?.minutesOff ?? 0), 0);
  while (left.size > 0) {
    let best: Look | null = null;
    let bestWorth = Number.NEGATIVE_INFINITY;
    for (const look of left) {
      const worth = ruleOf(look.probability, minutesOf(needs(look.panelIds)) + look.minutes);
      if (worth > bestWorth) [best, bestWorth] = [look, worth];
    }
    const opened = needs((best as Look).panelIds);
    minutes += minutesOf(opened);
    for (const id of opened) off.add(id);
    for (const look of left) {
      if (needs(look.panelIds).size > 0) continue;
      minutes += look.minutes;
      cost += look.probability * look.quality * minutes;
      weight += look.probability * look.quality;
      left.delete(look);
    }
  }
  return cost / weight;
}

describe('cars of usual size', () => {
  const cases = Array.from({ length: 30 }, (_, i) => carShaped(seededChance(900 + i), 14, 60));

  test('the greedy order is within 1 percent of the proved best on average, 4 percent at worst', () => {
    const ratios = cases.flatMap((car) => {
      const best = planDig(car.looks, car.panels, new Set(), { stateLimit: 20_000 });
      const greedy = planDig(car.looks, car.panels, new Set(), { stateLimit: 0 });
      expect(greedy.lowerBoundMinutes).toBeLessThanOrEqual(best.expectedMinutes * (1 + 1e-9));
      return [greedy.expectedMinutes / best.lowerBoundMinutes];
    });
    expect(Math.max(...ratios)).toBeLessThan(1.04);
    expect(ratios.reduce((a, b) => a + b, 0) / ratios.length).toBeLessThan(1.01);
  });

  test('the best order is proved at once, up to 60 panels and 1,000 looks', () => {
    for (const [panels, looks] of [
      [14, 60],
      [30, 200],
      [60, 1000],
    ] as const) {
      const car = carShaped(seededChance(panels), panels, looks);
      const plan = planDig(car.looks, car.panels, new Set());
      expect(plan.proved).toBe(true);
      expect(plan.lowerBoundMinutes).toBe(plan.expectedMinutes);
    }
  });

  test('it beats likeliest first and cheapest first on every one of them', () => {
    for (const each of cases) {
      const car = { ...each, looks: each.looks.map((look) => ({ ...look, once: true })) };
      const plan = planDig(car.looks, car.panels, new Set());
      const likeliest = simpleRule(car, (probability) => probability);
      const cheapest = simpleRule(car, (_, minutes) => -minutes);
      expect(plan.expectedMinutes).toBeLessThan(Math.min(likeliest, cheapest));
    }
  });

  test('every look is in the plan once, each after the panels it needs', () => {
    for (const car of cases) {
      const { openings } = planDig(car.looks, car.panels, new Set());
      const off = new Set<PanelId>();
      const first: string[] = [];
      for (const opening of openings) {
        for (const id of opening.takeOff) {
          expect(off.has(id)).toBe(false);
          for (const needed of car.panels.get(id)?.offFirst ?? []) expect(off.has(needed)).toBe(true);
          off.add(id);
        }
        for (const look of opening.looks) {
          for (const id of look.panelIds) expect(off.has(id)).toBe(true);
          if (!opening.again) first.push(look.id);
        }
      }
      expect(first.sort()).toEqual(car.looks.map((look) => look.id));
    }
  });
});
