import { type Block, joinBlocks, rowBlock } from './block.ts';
import { costOf, type WorkOrder } from './interleave.ts';
import { quickOrder } from './quick-order.ts';
import { type LookSpan, type SidneySet, sidneySets } from './sidney-sets.ts';
import type { LookGroup, Yard, YardPanel } from './yard.ts';

/** A work order with what is known about the best there can be. */
export interface BoundedOrder extends WorkOrder {
  readonly lowerBound: number;
  readonly proved: boolean;
}

/** How long the search for the best order may go on; what comes first ends it. */
export interface SearchBudget {
  /** Sets of work that may be split up. */
  readonly stateLimit?: number | undefined;
  /** True once time is up; asked between steps. The answer then depends on the machine. */
  readonly isOver?: (() => boolean) | undefined;
}

/** Sets of work split up before settling: some tens of milliseconds at most. */
const usualStateLimit = 400;

/** A piece of work in its best known order, and what its inner cost cannot fall below. */
interface Piece {
  readonly block: Block;
  readonly leastInner: number;
}

/** Costs nearer than this share are the same: rounding of sums in another order. */
const sameCost = 1e-12;

/**
 * Branch and decompose: the work falls into Sidney's sets, and each is solved by itself. Inside a set one
 * group is opened first and its worthiest look taken (panels come off no sooner than the look they are
 * needed for; later never costs): each choice whose bound is below the best so far is tried, and what is
 * left falls apart again. Equal sets are solved once. Exact when `proved`; past the budget a set keeps a
 * quick order, with the bound W M / 2 + sum(w c) / 2 that follows from no part of it being worth more per
 * minute than the whole.
 * @example
 * exactOrder(layYard([], sample.map.panels, new Set())).proved // => true
 */
export function exactOrder(yard: Yard, budget: SearchBudget = {}): BoundedOrder {
  return orderSearch(yard, budget).best();
}

/** Questions about one yard; what is learned of a set serves every later one. */
export interface OrderSearch {
  /** The best order of all. */
  best(): BoundedOrder;
  /** The best among the orders that open one group first and take its worthiest look at once. */
  bestAfterOpening(group: number): BoundedOrder;
}

/**
 * A search that may be asked more than one question.
 * @example
 * orderSearch(layYard([], sample.map.panels, new Set())).best().cost // => 0
 */
export function orderSearch(yard: Yard, budget: SearchBudget = {}): OrderSearch {
  return new Search(yard, budget);
}

class Search implements OrderSearch {
  readonly #yard: Yard;
  readonly #solved = new Map<string, Piece>();
  readonly #budget: SearchBudget;
  #left: number;
  #best: BoundedOrder | null = null;

  constructor(yard: Yard, budget: SearchBudget = {}) {
    this.#yard = yard;
    this.#budget = budget;
    this.#left = budget.stateLimit ?? usualStateLimit;
  }

  best(): BoundedOrder {
    this.#best ??= bounded(this.#solve(this.#allSpans()));
    return this.#best;
  }

  bestAfterOpening(group: number): BoundedOrder {
    const spans = this.#allSpans();
    const span = spans[group] as LookSpan;
    const first = this.#openingOf(span);
    const pieces = this.#solve(afterOpening(spans, span));
    return bounded([{ block: first, leastInner: first.inner }, ...pieces]);
  }

  #allSpans(): LookSpan[] {
    return this.#yard.groups.map(({ looks, panels }, group) => ({
      group,
      from: 0,
      to: looks.length,
      missing: panels,
    }));
  }

  #solve(spans: readonly LookSpan[]): Piece[] {
    return sidneySets(this.#yard, spans).map((set) => this.#solveSet(set));
  }

  #solveSet(set: SidneySet): Piece {
    const whole = this.#wholeSet(set);
    if (whole) return exact(whole);
    const key = set.spans
      .map(({ group, from, to, missing }) => `${group}:${from}-${to}:${missing.join(' ')}`)
      .join();
    const known = this.#solved.get(key);
    if (known) return known;
    const piece = this.#orderSet(set);
    this.#solved.set(key, piece);
    return piece;
  }

  #orderSet(set: SidneySet): Piece {
    const floor = leastInner(this.#yard.groups, set);
    if (this.#left <= 0 || this.#budget.isOver?.()) {
      const quick = quickOrder(this.#yard, set.spans);
      return { block: quick, leastInner: Math.min(quick.inner, floor) };
    }
    this.#left--;
    const branches = set.spans.map((span) => {
      const first = this.#openingOf(span);
      const sets = sidneySets(this.#yard, afterOpening(set.spans, span));
      return { first, sets, bound: this.#boundOf(first, sets) };
    });
    branches.sort((a, b) => a.bound - b.bound);
    let best: Block | null = null;
    let least = Number.POSITIVE_INFINITY;
    for (const { first, sets, bound } of branches) {
      if (best && bound >= best.inner * (1 - sameCost)) {
        least = Math.min(least, bound);
        continue;
      }
      let block = first;
      let branchLeast = first.inner;
      for (const each of sets) {
        const piece = this.#solveSet(each);
        branchLeast += piece.leastInner + piece.block.weight * block.minutes;
        block = joinBlocks(block, piece.block);
      }
      if (!best || block.inner < best.inner * (1 - sameCost)) best = block;
      least = Math.min(least, branchLeast);
    }
    const block = best as Block;
    return { block, leastInner: Math.min(block.inner, Math.max(least, floor)) };
  }

  #boundOf(first: Block, sets: readonly SidneySet[]): number {
    let bound = first.inner;
    let minutes = first.minutes;
    for (const set of sets) {
      const inner = this.#wholeSet(set)?.inner ?? leastInner(this.#yard.groups, set);
      bound += inner + set.weight * minutes;
      minutes += set.minutes;
    }
    return bound;
  }

  #setup({ group, missing }: LookSpan): Block | null {
    if (missing.length === 0) return null;
    const minutes = missing.reduce((sum, panel) => sum + (this.#yard.panels[panel] as YardPanel).minutes, 0);
    return { weight: 0, minutes, inner: 0, job: this.#yard.jobs.length + group, first: null, second: null };
  }

  #openingOf(span: LookSpan): Block {
    const look = (this.#yard.groups[span.group] as LookGroup).looks[span.from] as Block;
    const setup = this.#setup(span);
    return setup ? joinBlocks(setup, look) : look;
  }

  /** A set that has only one best order: open looks, or one span behind its panels. */
  #wholeSet({ open, spans }: SidneySet): Block | null {
    if (open) return open;
    const span = spans[0];
    if (!span || spans.length > 1) return null;
    const looks = rowBlock(this.#yard.groups[span.group] as LookGroup, span.from, span.to);
    const setup = this.#setup(span);
    return setup ? joinBlocks(setup, looks) : looks;
  }
}

/** What is left of some spans once one of them was opened and its worthiest look taken. */
function afterOpening(spans: readonly LookSpan[], opened: LookSpan): LookSpan[] {
  const off = new Set(opened.missing);
  return spans.map((span) => ({
    group: span.group,
    from: span === opened ? span.from + 1 : span.from,
    to: span.to,
    missing: span.missing.filter((panel) => !off.has(panel)),
  }));
}

const exact = (block: Block): Piece => ({ block, leastInner: block.inner });

function bounded(pieces: readonly Piece[]): BoundedOrder {
  const blocks = pieces.map(({ block }) => block);
  const cost = costOf(blocks);
  const proved = pieces.every(({ block, leastInner: least }) => block.inner <= least * (1 + 4 * sameCost));
  let unsure = 0;
  for (const { block, leastInner: least } of pieces) unsure += block.inner - least;
  return { cost, blocks, lowerBound: proved ? cost : cost - unsure, proved };
}

/** Least inner cost of a set no part of which is worth more per minute than the whole. */
function leastInner(groups: readonly LookGroup[], set: SidneySet): number {
  let own = 0;
  for (const { group, from, to } of set.spans) {
    const { ownUpTo } = groups[group] as LookGroup;
    own += (ownUpTo[to] as number) - (ownUpTo[from] as number);
  }
  return (set.weight * set.minutes + own) / 2;
}
