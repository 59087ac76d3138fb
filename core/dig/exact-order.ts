import { type Block, compareWorth, jobBlock, joinBlocks } from './block.ts';
import { costOf, type WorkOrder } from './interleave.ts';
import { sharePanels } from './share-panels.ts';
import type { LookGroup, Yard } from './yard.ts';

/** A work order with what is known about the best there can be. */
export interface BoundedOrder extends WorkOrder {
  readonly lowerBound: number;
  readonly proved: boolean;
}

/** States visited before settling: some tens of milliseconds on a car of usual size. */
const usualStateLimit = 4_000;

/** Costs nearer than this share are the same: sums of some hundred products in double precision. */
const sameCost = 1e-11;

/** What is done so far: which panels are off and how many looks each group has had. */
interface State {
  readonly off: Uint8Array;
  readonly taken: Uint16Array;
  readonly minutes: number;
  readonly cost: number;
}

/**
 * Branch and bound over the order of work, started from a good order. A step is the worthiest look of
 * an open group, or opening one group and taking its worthiest look (panels come off no sooner than
 * the look they are needed for; moving them later never costs). Exact when `proved`:
 * - bound: each panel's minutes are split among the groups that need it, after which groups are
 *   independent chains whose best order is known; any split charges at most the true minutes.
 * - a look, or an opening with its full minutes, worth at least as much as any group's split worth is
 *   taken at once (J. B. Sidney, Operations Research 23, 1975: a set of greatest ratio goes first;
 *   from memory).
 * - two ways to the same state: only the cheaper goes on.
 * @example
 * exactOrder(layYard([], sample.map.panels, new Set()), { cost: 0, blocks: [] }).proved // => true
 */
export function exactOrder(yard: Yard, start: WorkOrder, stateLimit = usualStateLimit): BoundedOrder {
  const shares = sharePanels(yard);
  const total = yard.groups.reduce((sum, group) => sum + group.looks.length, 0);
  const seen = new Map<string, number>();
  const steps: Block[] = [];
  let best: WorkOrder = start;
  let left = stateLimit;

  const visit = (state: State, depth: number): void => {
    if (depth === total) {
      if (state.cost < best.cost * (1 - sameCost)) best = { cost: state.cost, blocks: [...steps] };
      return;
    }
    if (left <= 0) return;
    left--;
    const key = `${state.taken.join()}|${state.off.join('')}`;
    const before = seen.get(key);
    if (before !== undefined && before <= state.cost * (1 + sameCost)) return;
    seen.set(key, state.cost);
    const view = survey(yard, shares, state);
    if (boundOf(view, state) >= best.cost * (1 - sameCost)) return;
    for (const move of movesOf(view)) {
      steps.push(move.block);
      visit(after(yard, state, move), depth + 1);
      steps.pop();
    }
  };

  const root: State = {
    off: new Uint8Array(yard.panels.length),
    taken: new Uint16Array(yard.groups.length),
    minutes: 0,
    cost: 0,
  };
  const rootBound = Math.min(start.cost, boundOf(survey(yard, shares, root), root));
  visit(root, 0);
  const proved = left > 0;
  return { ...best, lowerBound: proved ? best.cost : rootBound, proved };
}

interface Move {
  readonly group: number;
  readonly block: Block;
}

/** What is left to do in one state. */
interface View {
  /** Independent pieces of the relaxed rest. */
  readonly pieces: readonly Block[];
  /** Worthiest single look of each open group. */
  readonly looks: readonly Move[];
  /** Openings with their full minutes and first look, and with as many looks as raise the worth. */
  readonly openings: readonly (Move & { readonly whole: Block })[];
  /** No set of work that can be done next is worth more per minute than this. */
  readonly most: Block | null;
}

function survey(yard: Yard, shares: readonly Float64Array[], state: State): View {
  const pieces: Block[] = [];
  const looks: Move[] = [];
  const openings: (Move & { whole: Block })[] = [];
  let most: Block | null = null;
  yard.groups.forEach((group, number) => {
    const taken = state.taken[number] as number;
    const first = group.looks[taken];
    if (!first) return;
    let shared = 0;
    let full = 0;
    group.panels.forEach((panel, i) => {
      if (state.off[panel]) return;
      shared += (shares[number] as Float64Array)[i] as number;
      full += (yard.panels[panel] as { minutes: number }).minutes;
    });
    const missing = group.panels.some((panel) => !state.off[panel]);
    let used = taken;
    let piece: Block;
    if (missing) {
      const setup = { ...jobBlock(yard.jobs.length + number, 0, full), inner: 0 };
      openings.push({
        group: number,
        block: joinBlocks(setup, first),
        whole: withLooks(setup, group, taken).block,
      });
      const relaxed = withLooks({ ...setup, minutes: shared }, group, taken);
      piece = relaxed.block;
      used = relaxed.next;
    } else {
      looks.push({ group: number, block: first });
      piece = first;
      used = taken + 1;
    }
    pieces.push(piece);
    if (!most || compareWorth(piece, most) > 0) most = piece;
    for (let i = used; i < group.looks.length; i++) pieces.push(group.looks[i] as Block);
  });
  return { pieces, looks, openings, most };
}

/** A setup joined with the looks behind it that raise its worth per minute. */
function withLooks(setup: Block, group: LookGroup, from: number): { block: Block; next: number } {
  let block = setup;
  let next = from;
  for (; next < group.looks.length; next++) {
    const look = group.looks[next] as Block;
    if (block.weight > 0 && compareWorth(look, block) <= 0) break;
    block = joinBlocks(block, look);
  }
  return { block, next };
}

/** Least cost of any way on from here: the pieces in the best order, as if they were independent. */
function boundOf(view: View, state: State): number {
  const sorted = [...view.pieces].sort((a, b) => -compareWorth(a, b));
  const weight = sorted.reduce((sum, piece) => sum + piece.weight, 0);
  return state.cost + weight * state.minutes + costOf(sorted);
}

/** Steps worth trying, the likeliest to be right first; a single one when it is sure. */
function movesOf(view: View): readonly Move[] {
  const most = view.most as Block;
  const bestLook = view.looks.reduce<Move | null>(
    (best, move) => (best && compareWorth(best.block, move.block) >= 0 ? best : move),
    null,
  );
  if (bestLook && compareWorth(bestLook.block, most) >= 0) return [bestLook];
  const sure = view.openings.find(({ whole }) => compareWorth(whole, most) >= 0);
  if (sure) return [sure];
  const moves = [...view.openings].sort((a, b) => -compareWorth(a.whole, b.whole));
  return bestLook ? [...moves, bestLook] : moves;
}

function after(yard: Yard, state: State, move: Move): State {
  const off = state.off.slice();
  for (const panel of (yard.groups[move.group] as LookGroup).panels) off[panel] = 1;
  const taken = state.taken.slice();
  taken[move.group] = (taken[move.group] as number) + 1;
  return {
    off,
    taken,
    minutes: state.minutes + move.block.minutes,
    cost: state.cost + move.block.inner + move.block.weight * state.minutes,
  };
}
