import { type Block, compareWorth, joinBlocks } from './block.ts';
import type { LookGroup } from './yard.ts';

/** A whole order of work and its cost. */
export interface WorkOrder {
  /** Sum of weight times finishing minute. */
  readonly cost: number;
  /** In order; a job number below `jobs.length` is a look, the rest are groups being opened. */
  readonly blocks: readonly Block[];
}

/**
 * The cheapest order of work when groups are opened in a given order: once a place is open, its looks
 * may be taken at once or left for later. With the openings fixed this is an out-tree, for which
 * joining each opening with the worthiest blocks behind it is optimal (W. A. Horn, "Single-machine
 * job sequencing with treelike precedence ordering and linear delay penalties", SIAM J. Appl. Math.
 * 23, 1972; from memory). O(groups x looks).
 *
 * `setupOf` gives the block that opens the n-th group of the order, or null when it is open by then.
 * @example
 * interleave([], () => null).cost // => 0
 */
export function interleave(
  order: readonly Pick<LookGroup, 'looks'>[],
  setupOf: (position: number) => Block | null,
): WorkOrder {
  /** Ascending in worth, so that the worthiest is popped from the end. */
  let behind: Block[] = [];
  for (let i = order.length - 1; i >= 0; i--) {
    behind = mergeAscending(behind, (order[i] as Pick<LookGroup, 'looks'>).looks);
    let head = setupOf(i);
    if (!head) continue;
    for (let next = behind.at(-1); next && compareWorth(next, head) > 0; next = behind.at(-1)) {
      head = joinBlocks(head, next);
      behind.pop();
    }
    behind.push(head);
  }
  const blocks = behind.reverse();
  return { cost: costOf(blocks), blocks };
}

/**
 * Sum of weight times finishing minute of blocks done one after another.
 * @example
 * costOf([jobBlock(1, 0.3, 3), jobBlock(0, 0.5, 10), jobBlock(2, 0.2, 5)]) // => 11
 */
export function costOf(blocks: readonly Block[]): number {
  let minutes = 0;
  let cost = 0;
  for (const block of blocks) {
    cost += block.inner + block.weight * minutes;
    minutes += block.minutes;
  }
  return cost;
}

/** Joins an ascending list with a descending one; on equal worth the lower job number comes out first. */
function mergeAscending(ascending: readonly Block[], descending: readonly Block[]): Block[] {
  const merged: Block[] = [];
  let a = 0;
  let d = descending.length - 1;
  while (a < ascending.length || d >= 0) {
    const left = ascending[a];
    const right = descending[d];
    if (left && (!right || compareWorth(left, right) <= 0)) {
      merged.push(left);
      a++;
    } else if (right) {
      merged.push(right);
      d--;
    }
  }
  return merged;
}
