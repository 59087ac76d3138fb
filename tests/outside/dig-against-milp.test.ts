import loadHighs from 'highs';
import { describe, expect, test } from 'vitest';
import { planDig } from '#core/dig/plan-dig.ts';
import { seededChance } from '#core/quantity/chance.ts';
import { type PlainJob, plainJobs, randomCar, totalWeight } from '#tests/core/dig/small-cars.ts';

/**
 * The order of opening against HiGHS, a mixed-integer solver that knows nothing of ours. The model is
 * the linear ordering one of C. N. Potts, "An algorithm for the single machine sequencing problem with
 * precedence constraints", Mathematical Programming Study 13, 1980: d_ij = 1 where i comes before j,
 * no ring of three, and what must wait fixed (citation from memory).
 */
const highs = await loadHighs();

const name = (i: number, j: number) => `d${i}_${j}`;

function linearOrdering(jobs: readonly PlainJob[]): string {
  const objective: string[] = [];
  const rules: string[] = [];
  const binaries: string[] = [];
  jobs.forEach((after, j) => {
    jobs.forEach((before, i) => {
      if (i === j) return;
      binaries.push(name(i, j));
      const price = after.weight * before.minutes;
      if (price > 0) objective.push(`${price} ${name(i, j)}`);
      if (i < j) rules.push(`${name(i, j)} + ${name(j, i)} = 1`);
      jobs.forEach((_, k) => {
        if (k === i || k === j || i > j || i > k) return;
        rules.push(`${name(i, j)} + ${name(j, k)} + ${name(k, i)} <= 2`);
      });
    });
    for (const i of after.after) rules.push(`${name(i, j)} = 1`);
  });
  return `Minimize\n obj: ${objective.join(' + ')}\nSubject To\n ${rules
    .map((rule, i) => `r${i}: ${rule}`)
    .join('\n ')}\nBinary\n ${binaries.join(' ')}\nEnd`;
}

/** Mean minutes of the order the solver found, worked out anew from the order itself. */
function leastBySolver(jobs: readonly PlainJob[]): number {
  const result = highs.solve(linearOrdering(jobs), { output_flag: false, mip_rel_gap: 0, mip_abs_gap: 0 });
  expect(result.Status).toBe('Optimal');
  const columns = result.Columns as Record<string, { readonly Primal: number }>;
  const behind = (i: number) =>
    jobs.reduce((sum, _, j) => sum + (i === j ? 0 : Math.round(columns[name(i, j)]?.Primal ?? 0)), 0);
  const order = jobs.map((_, i) => i).sort((a, b) => behind(b) - behind(a));
  let minutes = 0;
  let cost = 0;
  for (const i of order) {
    const job = jobs[i] as PlainJob;
    minutes += job.minutes;
    cost += job.weight * minutes;
  }
  return cost / totalWeight(jobs);
}

describe('the order of opening against a mixed-integer solver', () => {
  test('equal to 1e-9 on 40 random cars of 9 to 15 jobs', { timeout: 120_000 }, () => {
    const chance = seededChance(77);
    for (let i = 0; i < 40; i++) {
      const panelCount = 3 + Math.floor(chance() * 3);
      const car = randomCar(chance, panelCount, 3 + Math.floor(chance() * 3), 2);
      const plan = planDig(car.looks, car.panels, new Set(), { stateLimit: 1_000_000 });
      expect(plan.proved).toBe(true);
      expect(plan.expectedMinutes).toBeCloseTo(leastBySolver(plainJobs(car)), 9);
    }
  });
});
