import { type Block, compareWorth, joinBlocks } from './block.ts';
import { type DenseSet, densestSet, type LookSpan } from './densest-set.ts';
import { costOf, type WorkOrder } from './interleave.ts';
import type { LookGroup, Yard } from './yard.ts';

/** A work order with what is known about the best there can be. */
export interface BoundedOrder extends WorkOrder {
  readonly lowerBound: number;
  readonly proved: boolean;
}

/** Sets of work split up before settling: some tens of milliseconds at most. */
const usualStateLimit = 400;

/** Work still to do: looks of some groups, and which panels are off. */
interface Rest {
  readonly off: Uint8Array;
  readonly spans: readonly { readonly group: number; readonly looks: readonly Block[] }[];
}

/** A piece of work in its best known order, and what its inner cost cannot fall below. */
interface Piece {
  readonly block: Block;
  readonly leastInner: number;
}

/**
 * Branch and decompose. The rest of the work falls into sets of falling chance per minute that follow
 * one another in some best order (J. B. Sidney, Operations Research 23, 1975; from memory), so each
 * is solved by itself. Inside a set one group is opened first and its worthiest look taken (panels
 * come off no sooner than the look they are needed for; later never costs): each choice is tried, and
 * what is left falls apart again. Equal rests are solved once. Exact when `proved`; past `stateLimit`
 * a set keeps a quick order, with the bound W M / 2 + sum(w c) / 2 that follows from no part of it
 * being worth more per minute than the whole.
 * @example
 * exactOrder(layYard([], sample.map.panels, new Set())).proved // => true
 */
export function exactOrder(yard: Yard, stateLimit = usualStateLimit): BoundedOrder {
  const search = new Search(yard, stateLimit);
  const pieces = search.solve({
    off: new Uint8Array(yard.panels.length),
    spans: yard.groups.map(({ looks }, group) => ({ group, looks })),
  });
  const blocks = pieces.map(({ block }) => block);
  const cost = costOf(blocks);
  const proved = pieces.every(({ block, leastInner }) => block.inner <= leastInner * (1 + 1e-12));
  const lowerBound = costOf(pieces.map(({ block, leastInner }) => ({ ...block, inner: leastInner })));
  return { cost, blocks, lowerBound: proved ? cost : lowerBound, proved };
}

class Search {
  private readonly yard: Yard;
  private readonly panelMinutes: readonly number[];
  private readonly solved = new Map<string, Piece>();
  private left: number;

  constructor(yard: Yard, limit: number) {
    this.yard = yard;
    this.panelMinutes = yard.panels.map(({ minutes }) => minutes);
    this.left = limit;
  }

  /** The rest of the work as pieces in order. */
  solve(rest: Rest): Piece[] {
    const pieces: Piece[] = [];
    const off = rest.off.slice();
    let open: Block[] = [];
    let hidden: LookSpan[] = [];
    const sort = (spans: Rest['spans']): void => {
      for (const { group, looks } of spans) {
        if (looks.length === 0) continue;
        const missing = (this.yard.groups[group] as LookGroup).panels.filter((panel) => !off[panel]);
        if (missing.length > 0) hidden.push({ group, looks, missing });
        else open.push(...looks);
      }
      open.sort((a, b) => -compareWorth(a, b) || a.job - b.job);
    };
    sort(rest.spans);
    while (hidden.length > 0) {
      const set = densestSet(hidden, this.panelMinutes);
      const whole = { weight: set.weight, minutes: set.minutes };
      const first = open.findIndex((look) => look.weight * whole.minutes < whole.weight * look.minutes);
      const now = open.splice(0, first < 0 ? open.length : first);
      for (const look of now) pieces.push({ block: look, leastInner: look.inner });
      pieces.push(this.solveSet(off, hidden, set));
      const counts = new Map(set.members.map(({ span, count }) => [span, count]));
      for (const { span } of set.members)
        for (const panel of (hidden[span] as LookSpan).missing) off[panel] = 1;
      const spans = hidden.map(({ group, looks }, i) => ({ group, looks: looks.slice(counts.get(i) ?? 0) }));
      hidden = [];
      sort(spans);
    }
    for (const look of open) pieces.push({ block: look, leastInner: look.inner });
    open = [];
    return pieces;
  }

  /** The best order inside one set of greatest worth. */
  private solveSet(off: Uint8Array, hidden: readonly LookSpan[], set: DenseSet): Piece {
    const spans = set.members.map(({ span, count }) => {
      const { group, looks, missing } = hidden[span] as LookSpan;
      return { group, looks: looks.slice(0, count), missing };
    });
    const key = spans
      .map(({ group, looks, missing }) => `${group}:${looks[0]?.job}-${looks.length}:${missing.join(' ')}`)
      .join();
    const known = this.solved.get(key);
    if (known) return known;
    const piece = this.orderSet(off, spans);
    this.solved.set(key, piece);
    return piece;
  }

  private orderSet(off: Uint8Array, spans: readonly LookSpan[]): Piece {
    if (spans.length === 1) return exact(this.openAll(off, spans));
    if (this.left <= 0) {
      const block = this.openAll(off, spans);
      return { block, leastInner: Math.min(block.inner, leastInner(block, spans)) };
    }
    this.left--;
    let best: Block | null = null;
    let least = Number.POSITIVE_INFINITY;
    for (const span of spans) {
      const setup = this.setup(span);
      const opened = off.slice();
      for (const panel of span.missing) opened[panel] = 1;
      const first = joinBlocks(setup, span.looks[0] as Block);
      const rest = spans.map((each) => ({
        ...each,
        looks: each === span ? each.looks.slice(1) : each.looks,
      }));
      const pieces = this.solve({ off: opened, spans: rest });
      let block = first;
      let bound = first.inner;
      let minutes = first.minutes;
      for (const piece of pieces) {
        block = joinBlocks(block, piece.block);
        bound += piece.leastInner + piece.block.weight * minutes;
        minutes += piece.block.minutes;
      }
      if (!best || block.inner < best.inner * (1 - 1e-13)) best = block;
      least = Math.min(least, bound);
    }
    const block = best as Block;
    return { block, leastInner: Math.min(block.inner, least) };
  }

  private setup({ group, missing }: LookSpan): Block {
    const minutes = missing.reduce((sum, panel) => sum + (this.panelMinutes[panel] as number), 0);
    return { weight: 0, minutes, inner: 0, job: this.yard.jobs.length + group, first: null, second: null };
  }

  /** A quick order of one set: the group of greatest worth first, then whatever is worthiest. */
  private openAll(off: Uint8Array, spans: readonly LookSpan[]): Block {
    const opened = off.slice();
    const blocks: Block[] = [];
    let left = [...spans];
    while (left.length > 0) {
      const pairs = left.map((span) => {
        const missing = span.missing.filter((panel) => !opened[panel]);
        let block = this.setup({ ...span, missing });
        for (const look of span.looks) block = joinBlocks(block, look);
        return { span, block, missing };
      });
      const next = pairs.reduce((a, b) => (compareWorth(b.block, a.block) > 0 ? b : a));
      for (const panel of next.missing) opened[panel] = 1;
      blocks.push(next.block);
      left = left.filter((span) => span !== next.span);
    }
    return blocks.reduce(joinBlocks);
  }
}

const exact = (block: Block): Piece => ({ block, leastInner: block.inner });

/** Least inner cost of a set no part of which is worth more per minute than the whole. */
function leastInner(block: Block, spans: readonly LookSpan[]): number {
  let own = 0;
  for (const { looks } of spans) for (const look of looks) own += look.weight * look.minutes;
  return (block.weight * block.minutes + own) / 2;
}
