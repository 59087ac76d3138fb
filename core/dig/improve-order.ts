import { interleave, openings, type WorkOrder } from './interleave.ts';
import type { LookGroup, Yard } from './yard.ts';

/** Work (orders tried times looks) spent on improving; some tens of milliseconds. */
const usualWork = 60_000;

/** Gains below this share of the cost are rounding, and would let ties flip to and fro. */
const leastGain = 1e-12;

/**
 * The work order of groups opened in a given order.
 * @example
 * workInOrder(layYard([], sample.map.panels, new Set()), []).cost // => 0
 */
export function workInOrder(yard: Yard, order: readonly number[]): WorkOrder {
  const setups = openings(yard, order);
  return interleave(
    order.map((number) => yard.groups[number] as LookGroup),
    (position) => setups[position] ?? null,
  );
}

/**
 * Moves one group at a time to a better place in the order until none helps or the work is spent.
 * @example
 * improveOrder(layYard([], sample.map.panels, new Set()), []) // => []
 */
export function improveOrder(yard: Yard, start: readonly number[], work: number = usualWork): number[] {
  let order = [...start];
  let cost = workInOrder(yard, order).cost;
  let left = Math.floor(work / Math.max(1, yard.jobs.length));
  let improved = true;
  while (improved && left > 0) {
    improved = false;
    for (let from = 0; from < order.length && left > 0; from++) {
      for (let to = 0; to < order.length && left > 0; to++) {
        if (from === to) continue;
        const moved = order.toSpliced(from, 1).toSpliced(to, 0, order[from] as number);
        left--;
        const movedCost = workInOrder(yard, moved).cost;
        if (movedCost < cost * (1 - leastGain)) {
          order = moved;
          cost = movedCost;
          improved = true;
        }
      }
    }
  }
  return order;
}
