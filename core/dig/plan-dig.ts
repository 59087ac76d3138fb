import type { Panel } from '../map/records.ts';
import type { PanelId } from '../quantity/id.ts';
import { bestWays } from './best-ways.ts';
import { jobsOf } from './block.ts';
import { cutOpenings, type DigOpening } from './cut-openings.ts';
import type { SearchBudget } from './exact-order.ts';
import { jobNames, keptOrder } from './kept-order.ts';
import type { Look } from './look.ts';
import { lookWays } from './look-ways.ts';
import type { Yard } from './yard.ts';

export type { DigOpening } from './cut-openings.ts';

/** The order of opening up. */
export interface DigOrder<L extends Look = Look> {
  readonly openings: readonly DigOpening<L>[];
  /** Mean minutes until the fault is seen, given that one of the looks sees it; 0 without looks. */
  readonly expectedMinutes: number;
  /** The same with the minutes for putting back what the plan took off until then. */
  readonly expectedTotalMinutes: number;
  /** No order can have a smaller mean of what is aimed at (`refit` or not); equal to it when proved. */
  readonly lowerBoundMinutes: number;
  readonly proved: boolean;
  /** Share by which the order may at most exceed the best there is; 0 when proved. */
  readonly gap: number;
  /** Looks that cannot be reached because a panel is to stay on. */
  readonly leftOut: readonly L[];
  /** Every going to a place in order, by name; may be handed back as `keepOrder`. */
  readonly lookOrder: readonly string[];
  /** The work in numbers; what `openingRegrets` asks again. */
  readonly yard: Yard<L>;
}

export interface DigOptions {
  /** Sets of work the exact search may split up before it settles for the best order found. */
  readonly stateLimit?: number | undefined;
  /** A clock in milliseconds and how long the search may take; the answer then depends on the machine. */
  readonly time?: { readonly nowMs: () => number; readonly limitMs: number } | undefined;
  /** Aim at the least minutes until all is back on, not until the fault is seen. */
  readonly refit?: boolean | undefined;
  /** Panels that stay on. */
  readonly notToday?: Iterable<PanelId> | undefined;
  /** Panels that come off for other work: their minutes are not the search's. */
  readonly comingOutAnyway?: Iterable<PanelId> | undefined;
  /** `lookOrder` of an earlier plan, kept where a new order gains less than a thousandth. */
  readonly keepOrder?: readonly string[] | undefined;
}

/**
 * The order of opening up with the least expected minutes until the fault is seen: panels are jobs of
 * weight 0, looks are jobs of weight p q, a look needs its panels and everything those need, and each
 * place is returned to once for what was overlooked (1|prec|sum w C). Exact by branch and decompose;
 * where that does not end within the budget the best order found is given, `proved` is false and `gap`
 * says how far from the best it can be at most. Putting back is charged in the total and never before
 * the find. Panels off already are not counted. Ties fall by id.
 * @example
 * planDig([{ id: 'a', panelIds: [], probability: 1, quality: 0.5, minutes: 2 }], new Map(), new Set()).expectedMinutes // => 2.666667
 */
export function planDig<L extends Look>(
  looks: readonly L[],
  panels: ReadonlyMap<PanelId, Panel>,
  off: ReadonlySet<PanelId>,
  options: DigOptions = {},
): DigOrder<L> {
  const free = new Set(options.comingOutAnyway);
  const minutesOff = (panel: Panel): number => (free.has(panel.id) ? 0 : panel.minutesOff);
  const minutesOn = (panel: Panel): number => (free.has(panel.id) ? 0 : panel.minutesOn);
  const aimed = options.refit ? (panel: Panel) => minutesOff(panel) + minutesOn(panel) : minutesOff;
  const ways = lookWays(looks, panels, off, new Set(options.notToday));
  const best = bestWays(ways, panels, off, { minutesOf: aimed }, searchBudget(options));
  const { yard } = best;
  const bestJobs = jobsOf(best.blocks);
  const kept = options.keepOrder ? keptOrder(yard, options.keepOrder, best.cost) : null;
  const jobs = kept ?? bestJobs;
  const cut = cutOpenings(yard, jobs, panels, { off: minutesOff, on: minutesOn });
  const seen = cut.seen > 0 ? cut.seen : 1;
  const aimedCost = options.refit ? cut.totalCost : cut.cost;
  const proved = best.proved && aimedCost <= best.lowerBound * (1 + sameCost);
  const lowerBound = proved ? aimedCost : Math.min(best.lowerBound, aimedCost);
  let names: readonly string[] | null = null;
  return {
    openings: cut.openings,
    expectedMinutes: cut.cost / seen,
    expectedTotalMinutes: cut.totalCost / seen,
    lowerBoundMinutes: lowerBound / seen,
    proved,
    gap: proved || lowerBound <= 0 ? 0 : aimedCost / lowerBound - 1,
    leftOut: ways.leftOut,
    // Thousands of names, and most plans are made only to be compared.
    get lookOrder() {
      names ??= jobNames(yard, jobs);
      return names;
    },
    yard,
  };
}

/** Costs nearer than this share are the same: the same sum in another order. */
const sameCost = 1e-10;

function searchBudget({ stateLimit, time }: DigOptions): SearchBudget {
  if (!time) return { stateLimit };
  const end = time.nowMs() + time.limitMs;
  return { stateLimit: stateLimit ?? Number.POSITIVE_INFINITY, isOver: () => time.nowMs() >= end };
}
