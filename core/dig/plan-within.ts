import type { Panel } from '../map/records.ts';
import type { PanelId } from '../quantity/id.ts';
import { type Block, compareWorth } from './block.ts';
import type { DigOpening } from './cut-openings.ts';
import type { Look } from './look.ts';
import { lookWays } from './look-ways.ts';
import { mostWorthSet } from './most-worth-set.ts';
import { type DigOptions, planDig } from './plan-dig.ts';
import { type LookGroup, layYard, type Yard, type YardJob } from './yard.ts';

/** What can be seen in a given time. */
export interface TimeBoxPlan<L extends Look = Look> {
  readonly openings: readonly DigOpening<L>[];
  readonly minutes: number;
  /** Chance that the fault is seen within the time. */
  readonly seen: number;
  /** No choice of openings can have a greater chance within the time. */
  readonly mostSeen: number;
  readonly proved: boolean;
}

/** Choices tried before the best found is kept. */
const usualChoiceLimit = 4_000;

/** Chances nearer than this are the same: rounding. */
const sameChance = 1e-12;

/**
 * The openings with the best chance of seeing the fault within some minutes: a knapsack in which panels
 * cost minutes once and looks lie behind them. Branch and bound over which groups of looks are opened,
 * bounded by the best closed set at a price per minute (Lagrange's relaxation; most worth set by minimum
 * cut). What is chosen is put in the order that finds the fault soonest. With other ways in, each look
 * takes its own panels; half views are not taken; putting back is not counted.
 * @example
 * planWithin([{ id: 'a', panelIds: ['panel:tread'], probability: 0.4, quality: 1, minutes: 2 }, { id: 'b', panelIds: ['panel:seat'], probability: 0.6, quality: 1, minutes: 2 }], sample.map.panels, new Set(), 6).seen // => 0.4
 */
export function planWithin<L extends Look>(
  looks: readonly L[],
  panels: ReadonlyMap<PanelId, Panel>,
  off: ReadonlySet<PanelId>,
  minutes: number,
  options: Pick<DigOptions, 'notToday' | 'comingOutAnyway' | 'stateLimit'> = {},
): TimeBoxPlan<L> {
  const free = new Set(options.comingOutAnyway);
  const { reachable, choices } = lookWays(looks, panels, off, new Set(options.notToday));
  const accessOf = new Map(
    choices.flatMap((choice) => {
      const way = choice.ways.find(({ halfView }) => !halfView);
      return choice.looks.map((look) => [look, way] as const);
    }),
  );
  const yard = layYard(
    reachable.filter((look) => !accessOf.has(look) || accessOf.get(look)),
    panels,
    off,
    {
      minutesOf: (panel) => (free.has(panel.id) ? 0 : panel.minutesOff),
      wayOf: (look) => accessOf.get(look),
    },
  );
  const box = new TimeBox(yard, minutes, options.stateLimit ?? usualChoiceLimit);
  const { jobs, mostSeen, proved } = box.best();
  const chosen = jobs.map((job) => yard.jobs[job] as YardJob<L>);
  const again = new Set(chosen.flatMap(({ look, view }) => (view === 'again' ? [look] : [])));
  const firsts = chosen.flatMap(({ look, view }) =>
    view === 'full'
      ? [{ ...look, panelIds: accessOf.get(look)?.panelIds ?? look.panelIds, once: !again.has(look) }]
      : [],
  );
  const plain = firsts.map(({ otherAccess: _, halfView: __, ...look }) => look as unknown as L);
  const { openings } = planDig(plain, panels, off, { comingOutAnyway: free });
  const spent = openings.reduce((sum, opening) => sum + opening.minutes, 0);
  const seen = openings.reduce((sum, opening) => sum + opening.seen, 0);
  return { openings, minutes: spent, seen, mostSeen: proved ? seen : Math.max(seen, mostSeen), proved };
}

interface Node {
  /** Panels off by decision, and groups that are not opened. */
  readonly off: ReadonlySet<number>;
  readonly shut: ReadonlySet<number>;
}

class TimeBox {
  readonly #yard: Yard;
  readonly #minutes: number;
  #left: number;
  #bestSeen = -1;
  #bestJobs: readonly number[] = [];
  #unsure = 0;

  constructor(yard: Yard, minutes: number, limit: number) {
    this.#yard = yard;
    this.#minutes = minutes;
    this.#left = limit;
  }

  best(): { jobs: readonly number[]; mostSeen: number; proved: boolean } {
    this.#branch({ off: new Set(), shut: new Set() });
    const proved = this.#unsure <= this.#bestSeen + sameChance;
    return { jobs: this.#bestJobs, mostSeen: Math.max(this.#unsure, this.#bestSeen), proved };
  }

  #branch(node: Node): void {
    const left = this.#minutes - this.#minutesOf(node.off);
    if (left < 0) return;
    const groups = this.#yard.groups;
    const missing = groups.map(({ panels }) => panels.filter((panel) => !node.off.has(panel)));
    const open = groups.flatMap(({ looks }, i) => (missing[i]?.length === 0 ? [...looks] : []));
    open.sort((a, b) => -compareWorth(a, b));
    const candidates = groups.flatMap((_, i) =>
      (missing[i] as number[]).length > 0 && !node.shut.has(i) ? [i] : [],
    );
    const fitting = candidates.filter((i) => this.#minutesOf(missing[i] as number[]) < left);
    const bound = this.#bound(open, fitting, missing, left);
    if (bound.seen <= this.#bestSeen + sameChance) return;
    if (this.#left <= 0) {
      this.#fill(open, left, false);
      this.#unsure = Math.max(this.#unsure, bound.seen);
      return;
    }
    this.#left--;
    const pick = bound.first;
    if (pick === null) {
      this.#fill(open, left, true);
      return;
    }
    this.#branch({ off: new Set([...node.off, ...(missing[pick] as number[])]), shut: node.shut });
    this.#branch({ off: node.off, shut: new Set([...node.shut, pick]) });
  }

  /** Lagrange's bound, and the group to decide next: the worthiest of the best set, or any that fits. */
  #bound(
    open: readonly Block[],
    fitting: readonly number[],
    missing: readonly (readonly number[])[],
    left: number,
  ): { seen: number; first: number | null } {
    const groups = this.#yard.groups;
    let seen = Number.POSITIVE_INFINITY;
    let first: number | null = fitting[0] ?? null;
    let low = 0;
    let high = Math.max(...open.map(rateOf), ...fitting.map((i) => rateOf(groups[i]?.looks[0] as Block)), 0);
    if (!Number.isFinite(high)) high = 1e6;
    for (let step = 0; step < 12; step++) {
      const price = step === 0 ? 0 : (low + high) / 2;
      const worthOf = (looks: readonly Block[]): number =>
        looks.reduce((sum, look) => sum + Math.max(0, look.weight - price * look.minutes), 0);
      const chosen = mostWorthSet(
        fitting.map((i) => worthOf((groups[i] as LookGroup).looks)),
        fitting.map((i) => missing[i] as number[]),
        this.#yard.panels.map((panel) => panel.minutes * price),
      );
      const panels = new Set(chosen.flatMap((at) => missing[fitting[at] as number] as number[]));
      const taken = [
        ...open,
        ...chosen.flatMap((at) => [...(groups[fitting[at] as number] as LookGroup).looks]),
      ];
      const used = taken.filter((look) => look.weight > price * look.minutes);
      const minutes = this.#minutesOf(panels) + used.reduce((sum, look) => sum + look.minutes, 0);
      seen = Math.min(seen, worthOf(taken) - price * this.#minutesOf(panels) + price * left);
      const best = chosen[0];
      if (best !== undefined && step > 0 && minutes > left) first = fitting[best] as number;
      if (step === 0) {
        if (minutes <= left) break;
        continue;
      }
      if (minutes > left) low = price;
      else high = price;
    }
    return { seen, first };
  }

  #minutesOf(panels: Iterable<number>): number {
    let minutes = 0;
    for (const panel of panels) minutes += this.#yard.panels[panel]?.minutes ?? 0;
    return minutes;
  }

  /** Open looks that fit into the time with the greatest chance (Horowitz and Sahni 1974, from memory). */
  #fill(open: readonly Block[], minutes: number, exactly: boolean): void {
    const taken: number[] = [];
    const go = (at: number, left: number, seen: number): void => {
      if (seen > this.#bestSeen + sameChance) {
        this.#bestSeen = seen;
        this.#bestJobs = [...taken];
      }
      const bound = seen + fractionalSeen(open, at, left);
      if (at === open.length || bound <= this.#bestSeen + sameChance) return;
      const look = open[at] as Block;
      if (look.minutes <= left) {
        taken.push(look.job);
        go(at + 1, left - look.minutes, seen + look.weight);
        taken.pop();
        if (exactly && this.#left <= 0) this.#unsure = Math.max(this.#unsure, bound);
        if (!exactly || this.#left <= 0) return;
        this.#left--;
      }
      go(at + 1, left, seen);
    };
    go(0, minutes, 0);
  }
}

const rateOf = ({ weight, minutes }: Block): number =>
  minutes > 0 ? weight / minutes : Number.POSITIVE_INFINITY;

function fractionalSeen(open: readonly Block[], from: number, minutes: number): number {
  let left = minutes;
  let seen = 0;
  for (let i = from; i < open.length && left > 0; i++) {
    const look = open[i] as Block;
    if (look.minutes > left) return seen + (look.weight * left) / look.minutes;
    seen += look.weight;
    left -= look.minutes;
  }
  return seen;
}
