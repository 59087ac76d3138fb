import { takeOffOrder } from '../map/panel-order.ts';
import type { Panel } from '../map/records.ts';
import type { PanelId } from '../quantity/id.ts';
import { jobsOf } from './block.ts';
import { type BoundedOrder, exactOrder } from './exact-order.ts';
import { greedyOrder } from './greedy-order.ts';
import { improveOrder, workInOrder } from './improve-order.ts';
import type { Look } from './look.ts';
import { type LookGroup, layYard, type Yard, type YardJob } from './yard.ts';

/** One opening of the plan: what comes off, then what is looked at. */
export interface DigOpening<L extends Look = Look> {
  readonly takeOff: readonly PanelId[];
  readonly looks: readonly L[];
  /** These places were looked at before in this plan; now for what was overlooked. */
  readonly again: boolean;
  /** Minutes of this opening: taking off and looking. */
  readonly minutes: number;
  /** Chance that the fault is seen in this opening. */
  readonly seen: number;
}

/** The order of opening up. */
export interface DigOrder<L extends Look = Look> {
  readonly openings: readonly DigOpening<L>[];
  /** Mean minutes until the fault is seen, given that one of the looks sees it; 0 without looks. */
  readonly expectedMinutes: number;
  /** No order can have a smaller mean than this. Equal to `expectedMinutes` when proved. */
  readonly lowerBoundMinutes: number;
  readonly proved: boolean;
}

export interface DigOptions {
  /** States of work the exact search may visit before it settles for the best order found. */
  readonly stateLimit?: number;
}

/**
 * The order of opening up with the least expected minutes until the fault is seen: panels are jobs of
 * weight 0, looks are jobs of weight p q, a look needs its panels and everything those need, and each
 * place is returned to once for what was overlooked (1|prec|sum w C). Exact by branch and decompose;
 * where that does not end within `stateLimit`, the groups are opened greedily by worth and the order
 * is improved by insertion, `proved` is false and the lower bound tells the gap. Minutes for putting
 * back are not in it. Ties fall by id.
 * @example
 * planDig([{ id: 'a', panelIds: [], probability: 1, quality: 0.5, minutes: 2 }], new Map(), new Set()).expectedMinutes // => 2.666667
 */
export function planDig<L extends Look>(
  looks: readonly L[],
  panels: ReadonlyMap<PanelId, Panel>,
  off: ReadonlySet<PanelId>,
  options: DigOptions = {},
): DigOrder<L> {
  const yard = layYard(looks, panels, off);
  const weight = yard.groups.reduce((sum, group) => sum + group.looks.reduce((s, b) => s + b.weight, 0), 0);
  if (weight === 0) return { openings: [], expectedMinutes: 0, lowerBoundMinutes: 0, proved: true };
  const best = bestOrder(yard, options.stateLimit);
  const jobs = best.blocks.flatMap(jobsOf);
  return {
    openings: cutIntoOpenings(yard, jobs, panels),
    expectedMinutes: best.cost / weight,
    lowerBoundMinutes: best.lowerBound / weight,
    proved: best.proved,
  };
}

/** The exact order where it can be proved; else the better of what that came to and an improved greedy order. */
function bestOrder(yard: Yard, stateLimit?: number): BoundedOrder {
  const exact = exactOrder(yard, stateLimit);
  if (exact.proved) return exact;
  const greedy = workInOrder(yard, improveOrder(yard, greedyOrder(yard)));
  return greedy.cost < exact.cost ? { ...exact, ...greedy } : exact;
}

/** A new opening begins where panels come off, another group is looked at, or a second round starts. */
function cutIntoOpenings<L extends Look>(
  yard: Yard<L>,
  jobs: readonly number[],
  panels: ReadonlyMap<PanelId, Panel>,
): DigOpening<L>[] {
  const groupOfJob = new Map<number, number>();
  yard.groups.forEach((group, number) => {
    for (const look of group.looks) groupOfJob.set(look.job, number);
  });
  const off = new Set<number>();
  const openings: { takeOff: PanelId[]; jobs: number[]; group: number; again: boolean }[] = [];
  let takeOff: PanelId[] = [];
  for (const job of jobs) {
    if (job >= yard.jobs.length) {
      const wanted = (yard.groups[job - yard.jobs.length] as LookGroup).panels.filter((p) => !off.has(p));
      for (const panel of wanted) off.add(panel);
      const ids = wanted.map((panel) => (yard.panels[panel] as { id: PanelId }).id);
      takeOff = [...takeOff, ...(takeOffOrder(panels, ids) ?? ids)];
      continue;
    }
    const group = groupOfJob.get(job) as number;
    const { again } = yard.jobs[job] as YardJob<L>;
    const last = openings.at(-1);
    if (last && takeOff.length === 0 && last.group === group && last.again === again) last.jobs.push(job);
    else {
      openings.push({ takeOff, jobs: [job], group, again });
      takeOff = [];
    }
  }
  return openings.map((opening) => asOpening(yard, opening, panels));
}

function asOpening<L extends Look>(
  yard: Yard<L>,
  opening: { takeOff: readonly PanelId[]; jobs: readonly number[]; again: boolean },
  panels: ReadonlyMap<PanelId, Panel>,
): DigOpening<L> {
  let minutes = 0;
  let seen = 0;
  for (const id of opening.takeOff) minutes += panels.get(id)?.minutesOff ?? 0;
  const looks = opening.jobs.map((job) => (yard.jobs[job] as YardJob<L>).look);
  for (const look of looks) {
    minutes += look.minutes;
    seen += look.probability * look.quality * (opening.again ? 1 - look.quality : 1);
  }
  return { takeOff: opening.takeOff, looks, again: opening.again, minutes, seen };
}
