import { describe, expect, test } from 'vitest';
import type { Look } from '#core/dig/look.ts';
import { planDig } from '#core/dig/plan-dig.ts';
import { sidneySets } from '#core/dig/sidney-sets.ts';
import { layYard } from '#core/dig/yard.ts';
import { seededChance } from '#core/quantity/chance.ts';
import { panelNamed, table } from '#tests/core/dig/small-cars.ts';

const none = new Set<never>();
const look = (id: string, probability: number, minutes: number, changes: Partial<Look> = {}): Look => ({
  id,
  panelIds: [],
  probability,
  quality: 1,
  minutes,
  ...changes,
});
const order = (looks: readonly Look[], panels = table([])): string[] =>
  planDig(looks, panels, none).openings.flatMap((opening) => opening.looks.map(({ id }) => id));

describe('textbook scheduling', () => {
  /** W. E. Smith, Naval Research Logistics Quarterly 3, 1956: weight over length, largest first (from memory). */
  test('Smith’s rule: on 50 random sets of open places the order is that of chance per minute', () => {
    const chance = seededChance(41);
    for (let round = 0; round < 50; round++) {
      const looks = Array.from({ length: 12 }, (_, i) => look(`${i}`, chance() / 12, 1 + 9 * chance()));
      const byRate = [...looks].sort((a, b) => b.probability / b.minutes - a.probability / a.minutes);
      expect(order(looks)).toEqual(byRate.map(({ id }) => id));
    }
  });

  /**
   * J. B. Sidney, Operations Research 23, 1975 (from memory): the set with the greatest weight over length
   * that is closed under what must come before goes first. Worked by hand: panel P (4 min) hides a (0.4,
   * 1 min), worth 0.4/5 = 0.08; panel Q (1 min) hides b (0.1, 1 min), worth 0.05; the open c (0.06, 1 min)
   * is worth 0.06 and comes between.
   */
  test('Sidney’s sets: P with a, then c, then Q with b', () => {
    const panels = table([panelNamed('panel:p', 4), panelNamed('panel:q', 1)]);
    const looks = [
      look('a', 0.4, 1, { panelIds: ['panel:p'] }),
      look('b', 0.1, 1, { panelIds: ['panel:q'] }),
      look('c', 0.06, 1),
    ];
    expect(order(looks, panels)).toEqual(['a', 'c', 'b']);
    const yard = layYard(looks, panels, none);
    const spans = yard.groups.map((group, i) => ({ group: i, from: 0, to: 1, missing: group.panels }));
    const sets = sidneySets(yard, spans);
    expect(sets.map(({ weight, minutes }) => weight / minutes)).toEqual([0.4 / 5, 0.06, 0.1 / 2]);
  });
});

describe('textbook search', () => {
  /**
   * Discrete search with overlook (Blackwell, in J. B. Kadane 1968 and L. D. Stone, "Theory of Optimal
   * Search", 1975; from memory): the k-th look into a box of chance p and quality q is worth
   * p q (1 - q)^(k-1) / minutes, and the looks go by falling worth over all boxes. Worked by hand for two
   * boxes of one minute: A (0.6, q 0.5) is worth 0.3 then 0.15, B (0.4, q 0.9) 0.36 then 0.036.
   */
  test('two boxes with overlook: B, A, A again, B again', () => {
    const boxes = [look('A', 0.6, 1, { quality: 0.5 }), look('B', 0.4, 1, { quality: 0.9 })];
    const plan = planDig(boxes, table([]), none);
    expect(plan.lookOrder).toEqual(['B', 'A', 'A (again)', 'B (again)']);
    const sum = 0.36 * 1 + 0.3 * 2 + 0.15 * 3 + 0.036 * 4;
    expect(plan.expectedMinutes).toBeCloseTo(sum / (0.36 + 0.3 + 0.15 + 0.036), 12);
  });

  /** Bayes’ rule after a clean look (B. O. Koopman 1946, from memory): 0.4 (1 - 0.8)/(1 - 0.32) = 0.1176. */
  test('what a return finds is what the first look overlooked', () => {
    const plan = planDig([look('A', 0.4, 1, { quality: 0.8 })], table([]), none);
    expect(plan.openings.map(({ seen }) => seen)[1]).toBeCloseTo(0.4 * 0.8 * 0.2, 12);
    expect(plan.openings.map(({ seen }) => seen)[1]).toBeCloseTo((0.08 / 0.68) * 0.68 * 0.8, 12);
  });
});
