import { type Block, compareWorth, joinBlocks } from './block.ts';
import type { LookGroup, Yard } from './yard.ts';

/**
 * Order of opening by worth per minute, worked out anew after each pick: a group counts with the
 * panels it still needs and with every look that becomes free by opening it, as many of them as raise
 * its worth. O(groups^2 x looks) at worst.
 * @example
 * greedyOrder(layYard([], sample.map.panels, new Set())) // => []
 */
export function greedyOrder(yard: Yard): number[] {
  const off = new Uint8Array(yard.panels.length);
  const left = new Set(yard.groups.keys());
  const order: number[] = [];
  while (left.size > 0) {
    let best = -1;
    let bestBlock: Block | null = null;
    for (const number of left) {
      const block = worthOfOpening(yard, number, left, off);
      if (!bestBlock || compareWorth(block, bestBlock) > 0) {
        best = number;
        bestBlock = block;
      }
    }
    order.push(best);
    left.delete(best);
    for (const panel of (yard.groups[best] as LookGroup).panels) off[panel] = 1;
  }
  return order;
}

/** The opening of one group joined with the freed looks that raise its worth. */
function worthOfOpening(yard: Yard, number: number, left: ReadonlySet<number>, off: Uint8Array): Block {
  const group = yard.groups[number] as LookGroup;
  const opened = new Uint8Array(off);
  let minutes = 0;
  for (const panel of group.panels) {
    if (opened[panel]) continue;
    opened[panel] = 1;
    minutes += (yard.panels[panel] as { minutes: number }).minutes;
  }
  const freed: Block[] = [];
  for (const other of left) {
    const { panels, looks } = yard.groups[other] as LookGroup;
    if (panels.every((panel) => opened[panel])) freed.push(...looks);
  }
  freed.sort((a, b) => -compareWorth(a, b) || a.job - b.job);
  let block: Block = { weight: 0, minutes, inner: 0, job: -1, first: null, second: null };
  for (const look of freed) {
    if (block.weight > 0 && compareWorth(look, block) <= 0) break;
    block = joinBlocks(block, look);
  }
  return block;
}
