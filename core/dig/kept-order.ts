import type { Look } from './look.ts';
import type { LookGroup, Yard, YardJob } from './yard.ts';

/** A new order must gain this share to replace the one already told (judgement: nobody feels less). */
const leastGain = 0.001;

const nameOf = ({ look, view }: YardJob): string => (view === 'full' ? look.id : `${look.id} (${view})`);

/**
 * The goings of an order by name, openings left out.
 * @example
 * jobNames(layYard([{ id: 'a', panelIds: [], probability: 1, quality: 0.5, minutes: 2 }], new Map(), new Set()), [0, 1]) // => ['a', 'a (again)']
 */
export function jobNames(yard: Yard, jobs: readonly number[]): string[] {
  const names: string[] = [];
  for (const job of jobs) {
    const named = yard.jobs[job];
    if (named) names.push(nameOf(named));
  }
  return names;
}

/**
 * An earlier order on a yard whose chances have changed a little, with openings put in where they are
 * needed; null where it has not the same goings, or a better order gains at least a thousandth.
 * @example
 * keptOrder(layYard([{ id: 'a', panelIds: [], probability: 1, quality: 0.5, minutes: 2 }], new Map(), new Set()), ['a', 'a (again)'], 2) // => [0, 1]
 */
export function keptOrder<L extends Look>(
  yard: Yard<L>,
  names: readonly string[],
  leastCost: number,
): number[] | null {
  if (names.length !== yard.jobs.length) return null;
  const numbers = new Map(yard.jobs.map((job, i) => [nameOf(job), i]));
  const off = new Set<number>();
  const jobs: number[] = [];
  let minutes = 0;
  let cost = 0;
  for (const name of names) {
    const number = numbers.get(name);
    if (number === undefined) return null;
    numbers.delete(name);
    const job = yard.jobs[number] as YardJob<L>;
    const missing = (yard.groups[job.group] as LookGroup).panels.filter((panel) => !off.has(panel));
    if (missing.length > 0) jobs.push(yard.jobs.length + job.group);
    for (const panel of missing) {
      off.add(panel);
      minutes += yard.panels[panel]?.minutes ?? 0;
    }
    minutes += job.minutes;
    cost += job.weight * minutes;
    jobs.push(number);
  }
  return cost <= leastCost * (1 + leastGain) ? jobs : null;
}
