import type { Look } from '#core/dig/look.ts';
import type { Panel } from '#core/map/records.ts';
import type { Chance } from '#core/quantity/chance.ts';
import type { PanelId } from '#core/quantity/id.ts';
import { sample } from '#tests/sample.ts';

/** Looks and panels of an invented car, for tests of the order of opening. */
export interface SmallCar {
  readonly looks: readonly Look[];
  readonly panels: ReadonlyMap<PanelId, Panel>;
}

export const panelNamed = (id: PanelId, minutesOff: number, offFirst: readonly PanelId[] = []): Panel => ({
  ...sample.tread,
  id,
  name: id,
  minutesOff,
  offFirst: [...offFirst],
});

export const table = (panels: readonly Panel[]): ReadonlyMap<PanelId, Panel> =>
  new Map(panels.map((panel) => [panel.id, panel]));

/**
 * A random car: panels that may need earlier ones off, and looks that need up to `mostNeeded` panels.
 * Chances add up to one.
 */
export function randomCar(
  chance: Chance,
  panelCount: number,
  lookCount: number,
  mostNeeded: number,
): SmallCar {
  const ids = Array.from({ length: panelCount }, (_, i): PanelId => `panel:p${i}`);
  const panels = ids.map((id, i) =>
    panelNamed(
      id,
      1 + Math.floor(chance() * 20),
      ids.slice(0, i).filter(() => chance() < 0.25),
    ),
  );
  const weights = Array.from({ length: lookCount }, () => chance() ** 2 + 0.01);
  const sum = weights.reduce((a, b) => a + b, 0);
  const looks = weights.map((weight, i): Look => {
    const needed = Math.floor(chance() * (mostNeeded + 1));
    return {
      id: `look ${i}`,
      panelIds: Array.from({ length: needed }, () => ids[Math.floor(chance() * panelCount)] as PanelId),
      probability: weight / sum,
      quality: 0.5 + chance() * 0.49,
      minutes: 0.5 + Math.floor(chance() * 8) / 2,
    };
  });
  return { looks, panels: table(panels) };
}

/** Jobs of the whole problem written out plainly: panels, first looks and returns, with what each waits for. */
export interface PlainJob {
  readonly weight: number;
  readonly minutes: number;
  readonly after: readonly number[];
}

export function plainJobs({ looks, panels }: SmallCar): PlainJob[] {
  const numbers = new Map([...panels.keys()].map((id, i) => [id, i]));
  const jobs: PlainJob[] = [...panels.values()].map((panel) => ({
    weight: 0,
    minutes: panel.minutesOff,
    after: panel.offFirst.map((id) => numbers.get(id) as number),
  }));
  for (const look of looks) {
    const after = look.panelIds.map((id) => numbers.get(id) as number);
    const weight = look.probability * look.quality;
    jobs.push({ weight, minutes: look.minutes, after });
    jobs.push({
      weight: weight * (1 - look.quality),
      minutes: look.minutes,
      after: [...after, jobs.length - 1],
    });
  }
  return jobs;
}

export const totalWeight = (jobs: readonly PlainJob[]): number =>
  jobs.reduce((sum, job) => sum + job.weight, 0);

/** Least mean minutes over every order that keeps what waits for what, tried one by one. */
export function leastByTryingAll(jobs: readonly PlainJob[]): number {
  let least = Number.POSITIVE_INFINITY;
  const done = new Set<number>();
  const go = (minutes: number, cost: number): void => {
    if (done.size === jobs.length) least = Math.min(least, cost);
    jobs.forEach((job, i) => {
      if (done.has(i) || job.after.some((each) => !done.has(each))) return;
      done.add(i);
      go(minutes + job.minutes, cost + job.weight * (minutes + job.minutes));
      done.delete(i);
    });
  };
  go(0, 0);
  return least / totalWeight(jobs);
}

/** The same by going over sets of finished jobs: the cost of what is left depends on the set alone. */
export function leastOverSets(jobs: readonly PlainJob[]): number {
  const all = 2 ** jobs.length - 1;
  const cost = new Float64Array(all + 1).fill(Number.POSITIVE_INFINITY);
  const waits = jobs.map((job) => job.after.reduce((mask, each) => mask | (1 << each), 0));
  cost[0] = 0;
  for (let set = 0; set < all; set++) {
    if (cost[set] === Number.POSITIVE_INFINITY) continue;
    let minutes = 0;
    for (let i = 0; i < jobs.length; i++) if (set & (1 << i)) minutes += (jobs[i] as PlainJob).minutes;
    jobs.forEach((job, i) => {
      const bit = 1 << i;
      if (set & bit || ((waits[i] as number) & ~set) !== 0) return;
      const next = (cost[set] as number) + job.weight * (minutes + job.minutes);
      if (next < (cost[set | bit] as number)) cost[set | bit] = next;
    });
  }
  return (cost[all] as number) / totalWeight(jobs);
}
