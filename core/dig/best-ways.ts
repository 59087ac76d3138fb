import type { Panel } from '../map/records.ts';
import type { PanelId } from '../quantity/id.ts';
import { type BoundedOrder, exactOrder, type SearchBudget } from './exact-order.ts';
import type { Look } from './look.ts';
import { easiestWay, type LookWays, type WayChoice } from './look-ways.ts';
import { type LookWay, layYard, type Yard, type YardWishes } from './yard.ts';

/** The best order with the way each look is gone about. */
export interface WayOrder<L extends Look> extends BoundedOrder {
  readonly yard: Yard<L>;
  readonly wayOf: (look: L) => LookWay | undefined;
}

/** Up to this many combinations of ways are all tried; beyond it one choice at a time is changed. */
const mostCombinations = 64;

/** Rounds of changing one choice at a time; the second seldom changes anything. */
const mostRounds = 3;

/**
 * The best order over all ways of going about the looks. With accesses to choose from every combination
 * is a problem of its own, and the best of them is the best there is: whichever access is open first
 * serves all later looks. Proved where every combination was tried and proved; with half views the
 * bound is the order found when they cost nothing, since looks with the same ways might part company.
 * @example
 * bestWays({ reachable: [], leftOut: [], choices: [] }, sample.map.panels, new Set(), {}).cost // => 0
 */
export function bestWays<L extends Look>(
  { reachable, choices }: LookWays<L>,
  panels: ReadonlyMap<PanelId, Panel>,
  off: ReadonlySet<PanelId>,
  wishes: Pick<YardWishes<L>, 'minutesOf'>,
  budget: SearchBudget = {},
): WayOrder<L> {
  const choiceOf = new Map(choices.flatMap((choice, i) => choice.looks.map((look) => [look, i] as const)));
  const wayBy = (picks: readonly number[]) => (look: L) => {
    const choice = choiceOf.get(look);
    return choice === undefined ? undefined : choices[choice]?.ways[picks[choice] as number];
  };
  const orderOf = (picks: readonly number[]): WayOrder<L> => {
    const wayOf = wayBy(picks);
    const yard = layYard(reachable, panels, off, { ...wishes, wayOf });
    return { ...exactOrder(yard, budget), yard, wayOf };
  };
  let combinations = 1;
  for (const { ways } of choices) combinations *= ways.length;
  const start = choices.map(() => 0);
  if (combinations === 1) return orderOf(start);
  const isAll = combinations <= mostCombinations;
  const tried = isAll ? allPicks(choices).map(orderOf) : changedOneByOne(choices, start, orderOf, budget);
  const best = tried.reduce((a, b) => (b.cost < a.cost * (1 - 1e-12) ? b : a));
  const isWhole = isAll && choices.every(({ looks, ways }) => looks.length === 1 || !hasHalfView(ways));
  const lowerBound = isWhole
    ? Math.min(...tried.map((each) => each.lowerBound))
    : easiestBound(reachable, choices, choiceOf, panels, off, wishes, budget);
  const proved = best.cost <= lowerBound * (1 + 1e-12);
  return { ...best, lowerBound: proved ? best.cost : lowerBound, proved };
}

const hasHalfView = (ways: readonly LookWay[]): boolean => ways.some(({ halfView }) => halfView);

function allPicks(choices: readonly WayChoice<Look>[]): number[][] {
  let picks: number[][] = [[]];
  for (const { ways } of choices) picks = picks.flatMap((before) => ways.map((_, i) => [...before, i]));
  return picks;
}

function changedOneByOne<L extends Look>(
  choices: readonly WayChoice<L>[],
  start: readonly number[],
  orderOf: (picks: readonly number[]) => WayOrder<L>,
  budget: SearchBudget,
): WayOrder<L>[] {
  let picks = [...start];
  let best = orderOf(picks);
  for (let round = 0, changed = true; changed && round < mostRounds; round++) {
    changed = false;
    for (const [i, { ways }] of choices.entries()) {
      for (let way = 0; way < ways.length; way++) {
        if (way === picks[i] || budget.isOver?.()) continue;
        const tried = orderOf(picks.with(i, way));
        if (tried.cost >= best.cost * (1 - 1e-12)) continue;
        best = tried;
        picks = picks.with(i, way);
        changed = true;
      }
    }
  }
  return [best];
}

function easiestBound<L extends Look>(
  reachable: readonly L[],
  choices: readonly WayChoice<L>[],
  choiceOf: ReadonlyMap<L, number>,
  panels: ReadonlyMap<PanelId, Panel>,
  off: ReadonlySet<PanelId>,
  wishes: Pick<YardWishes<L>, 'minutesOf'>,
  budget: SearchBudget,
): number {
  const stillOn = new Map([...panels].filter(([id]) => !off.has(id)));
  const easiest = choices.map(({ ways }) => easiestWay(ways, stillOn));
  const wayOf = (look: L) => easiest[choiceOf.get(look) ?? -1];
  const yard = layYard(reachable, panels, off, { ...wishes, wayOf, freeHalfViews: true });
  return exactOrder(yard, budget).lowerBound;
}
