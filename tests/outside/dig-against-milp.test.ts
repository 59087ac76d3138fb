import loadHighs from 'highs';
import { describe, expect, test } from 'vitest';
import { planDig } from '#core/dig/plan-dig.ts';
import { seededChance } from '#core/quantity/chance.ts';
import { type PlainJob, plainJobs, randomCar, totalWeight } from '#tests/core/dig/small-cars.ts';

/**
 * The order of opening against HiGHS, a mixed-integer solver that knows nothing of ours. The model is
 * the linear ordering one of C. N. Potts, "An algorithm for the single machine sequencing problem with
 * precedence constraints", Mathematical Programming Study 13, 1980 (from memory): d_ij = 1 where i comes
 * before j, here for i < j only with d_ji = 1 - d_ij put in, no ring of three, and what must wait fixed.
 */
const highs = await loadHighs();

const cars = 300;
const name = (i: number, j: number) => `d${i}_${j}`;

/** `share` times d_ij, written with the one of d_ij and d_ji that is a variable. */
const term = (share: number, i: number, j: number): string => {
  const signed = i < j ? share : -share;
  return `${signed < 0 ? '-' : '+'} ${Math.abs(signed)} ${name(Math.min(i, j), Math.max(i, j))}`;
};

function linearOrdering(jobs: readonly PlainJob[]): string {
  const objective: string[] = [];
  const rules: string[] = [];
  const binaries: string[] = [];
  jobs.forEach((after, j) => {
    jobs.forEach((before, i) => {
      if (i >= j) return;
      // i before j delays j by i's minutes; j before i delays i by j's: one figure for the one variable.
      objective.push(term(after.weight * before.minutes - before.weight * after.minutes, i, j));
      binaries.push(name(i, j));
      for (let k = j + 1; k < jobs.length; k++) {
        const ring = `${term(1, i, j)} ${term(1, j, k)} ${term(-1, i, k)}`;
        rules.push(`${ring} <= 1`, `${ring} >= 0`);
      }
    });
    for (const i of after.after) rules.push(`${name(Math.min(i, j), Math.max(i, j))} = ${i < j ? 1 : 0}`);
  });
  return `Minimize\n obj: ${objective.join(' ')}\nSubject To\n ${rules
    .map((rule, i) => `r${i}: ${rule}`)
    .join('\n ')}\nBinary\n ${binaries.join(' ')}\nEnd`;
}

/** Mean minutes of the order the solver found, worked out anew from the order itself. */
function leastBySolver(jobs: readonly PlainJob[]): number {
  const result = highs.solve(linearOrdering(jobs), { output_flag: false, mip_rel_gap: 0, mip_abs_gap: 0 });
  expect(result.Status).toBe('Optimal');
  const columns = result.Columns as Record<string, { readonly Primal: number }>;
  const isBefore = (i: number, j: number): boolean => {
    const value = Math.round(columns[name(Math.min(i, j), Math.max(i, j))]?.Primal ?? 0);
    return (i < j ? value : 1 - value) === 1;
  };
  const behind = (i: number) => jobs.reduce((sum, _, j) => sum + (i !== j && isBefore(i, j) ? 1 : 0), 0);
  const order = jobs.map((_, i) => i).sort((a, b) => behind(b) - behind(a));
  const done = new Set<number>();
  let minutes = 0;
  let cost = 0;
  for (const i of order) {
    const job = jobs[i] as PlainJob;
    expect(job.after.every((each) => done.has(each))).toBe(true);
    done.add(i);
    minutes += job.minutes;
    cost += job.weight * minutes;
  }
  return cost / totalWeight(jobs);
}

describe(`the order of opening against a mixed-integer solver, on ${cars} random cars of 9 to 15 jobs`, () => {
  const chance = seededChance(77);
  const solved = Array.from({ length: cars }, () => {
    const panelCount = 3 + Math.floor(chance() * 3);
    const car = randomCar(chance, panelCount, 3 + Math.floor(chance() * 3), 2);
    return { car, best: leastBySolver(plainJobs(car)) };
  });

  test('the exact order is proved and equal to 1e-9', () => {
    for (const { car, best } of solved) {
      const plan = planDig(car.looks, car.panels, new Set(), { stateLimit: 1_000_000 });
      expect(plan.proved).toBe(true);
      expect(plan.gap).toBe(0);
      expect(Math.abs(plan.expectedMinutes - best)).toBeLessThanOrEqual(1e-9 * Math.max(1, best));
    }
  });

  test('without search it is within 0.5 percent on average and 3 percent at worst, and its gap is true', () => {
    const overs = solved.map(({ car, best }) => {
      const plan = planDig(car.looks, car.panels, new Set(), { stateLimit: 0 });
      expect(plan.lowerBoundMinutes).toBeLessThanOrEqual(best * (1 + 1e-9));
      expect(plan.expectedMinutes).toBeGreaterThanOrEqual(best * (1 - 1e-9));
      expect(plan.expectedMinutes / best - 1).toBeLessThanOrEqual(plan.gap + 1e-9);
      if (plan.proved) expect(plan.expectedMinutes).toBeLessThanOrEqual(best * (1 + 1e-9));
      return plan.expectedMinutes / best - 1;
    });
    expect(overs.reduce((a, b) => a + b, 0) / overs.length).toBeLessThan(0.005);
    expect(Math.max(...overs)).toBeLessThan(0.03);
  });
});
