import { type OrderSearch, orderSearch } from './exact-order.ts';
import type { Look } from './look.ts';
import type { DigOrder } from './plan-dig.ts';
import type { Yard } from './yard.ts';

/** Openings whose regret is under this share of the plan's mean minutes are as good (judgement). */
export const nearTieShare = 0.02;

/**
 * Minutes lost on average by going to one opening of the plan first and on from there in the best way;
 * never negative. An opening that comes after others takes off all it needs.
 * @example
 * regretMinutes(planDig([{ id: 'a', panelIds: [], probability: 0.5, quality: 1, minutes: 2 }, { id: 'b', panelIds: ['panel:seat'], probability: 0.5, quality: 1, minutes: 2 }], sample.map.panels, new Set()), 1) // => 9
 */
export function regretMinutes<L extends Look>(plan: DigOrder<L>, choice: number): number {
  return regretOf(plan, choice, orderSearch(plan.yard), groupsOf(plan.yard));
}

/**
 * The regret of each of the first openings of a plan, in minutes, for one search.
 * @example
 * openingRegrets(planDig([{ id: 'a', panelIds: [], probability: 0.5, quality: 1, minutes: 2 }], new Map(), new Set()), 3) // => [0]
 */
export function openingRegrets<L extends Look>(plan: DigOrder<L>, count: number): number[] {
  const search = orderSearch(plan.yard);
  const groups = groupsOf(plan.yard);
  return plan.openings.slice(0, count).map((_, i) => regretOf(plan, i, search, groups));
}

/**
 * True where an opening is as good to begin with as the plan's first: it costs less than 2 percent.
 * @example
 * isNearTie(40, 0.5) // => true
 */
export function isNearTie(planMinutes: number, regret: number): boolean {
  return regret <= nearTieShare * planMinutes;
}

function groupsOf(yard: Yard): ReadonlyMap<string, number> {
  return new Map(yard.jobs.map(({ look, view, group }) => [`${view} ${look.id}`, group]));
}

function regretOf<L extends Look>(
  plan: DigOrder<L>,
  choice: number,
  search: OrderSearch,
  groups: ReadonlyMap<string, number>,
): number {
  const opening = plan.openings[choice];
  const look = opening?.looks[0];
  if (choice === 0 || !opening || !look) return 0;
  const view = opening.half ? 'half' : 'full';
  const group = groups.get(`${view} ${look.id}`);
  if (group === undefined) return 0;
  return Math.max(0, search.bestAfterOpening(group).cost - search.best().cost) / plan.yard.weight;
}
