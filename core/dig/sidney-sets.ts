import { type Block, compareWorth, type JobRow, jobRow, rowBlock } from './block.ts';
import { mostWorthSet } from './most-worth-set.ts';
import type { LookGroup } from './yard.ts';

/** Some of a group's looks, worthiest first, behind panels still on. */
export interface LookSpan {
  readonly group: number;
  /** Looks `from` up to but not `to` of the group. */
  readonly from: number;
  readonly to: number;
  /** Panels still on that hide it. */
  readonly missing: readonly number[];
}

/** A set of looks that follows on what came before it as a whole, or looks that lie open by then. */
export interface SidneySet {
  readonly weight: number;
  readonly minutes: number;
  readonly spans: readonly LookSpan[];
  /** Set instead of spans where looks of several groups lie open, worthiest first. */
  readonly row?: JobRow;
}

/** Two chances per minute nearer than this are the same: rounding of the flow. */
const sameRate = 1e-11;

/**
 * Sidney's decomposition: the work falls into sets of falling chance per minute that follow one another
 * in some best order (J. B. Sidney, "Decomposition algorithms for single-machine sequencing with
 * precedence relations and deferral costs", Operations Research 23, 1975; from memory). Found by
 * dividing: whatever is worth more than the mean chance per minute of the whole, as a closed set, goes
 * before the rest, and each half is divided on; a set nothing of which is worth more than its mean is
 * one of Sidney's. Looks without missing panels come between the sets.
 * @example
 * sidneySets([{ panels: [0], ...jobRow([jobBlock(0, 0.5, 3)]) }], [{ group: 0, from: 0, to: 1, missing: [0] }], [7])[0].minutes // => 10
 */
export function sidneySets(
  groups: readonly LookGroup[],
  spans: readonly LookSpan[],
  panelMinutes: readonly number[],
): SidneySet[] {
  const division = new Division(groups, panelMinutes);
  division.divide(spans);
  return division.inOrder();
}

class Division {
  readonly #groups: readonly LookGroup[];
  readonly #panelMinutes: readonly number[];
  /** Sets behind panels, in order. */
  readonly #sets: SidneySet[] = [];
  /** Looks that lie open once so many of the sets are done. */
  readonly #open: { readonly span: LookSpan; readonly afterSets: number }[] = [];

  constructor(groups: readonly LookGroup[], panelMinutes: readonly number[]) {
    this.#groups = groups;
    this.#panelMinutes = panelMinutes;
  }

  divide(spans: readonly LookSpan[]): void {
    const hidden: LookSpan[] = [];
    for (const span of spans) {
      if (span.to <= span.from) continue;
      if (span.missing.length > 0) hidden.push(span);
      else this.#open.push({ span, afterSets: this.#sets.length });
    }
    if (hidden.length === 1) this.#divideOne(hidden[0] as LookSpan);
    else if (hidden.length > 1) this.#divideHidden(hidden);
  }

  #divideHidden(hidden: readonly LookSpan[]): void {
    const whole = totals(this.#groups, hidden, this.#panelMinutes);
    const rate = whole.minutes > 0 ? whole.weight / whole.minutes : Number.POSITIVE_INFINITY;
    const ends = hidden.map((span) => worthMoreUpTo(this.#group(span), span, rate));
    const chosen = rate < Number.POSITIVE_INFINITY ? this.#worthMore(hidden, ends, rate) : new Set<number>();
    const upper: LookSpan[] = [];
    const lower: LookSpan[] = [];
    hidden.forEach((span, i) => {
      const end = ends[i] as number;
      if (chosen.has(i) && end > span.from) upper.push({ ...span, to: end });
    });
    const first = totals(this.#groups, upper, this.#panelMinutes);
    if (upper.length === 0 || first.weight <= rate * first.minutes * (1 + sameRate)) {
      this.#sets.push({ weight: whole.weight, minutes: whole.minutes, spans: hidden });
      return;
    }
    const off = new Set(upper.flatMap(({ missing }) => missing));
    hidden.forEach((span, i) => {
      const from = chosen.has(i) ? (ends[i] as number) : span.from;
      lower.push({ ...span, from, missing: span.missing.filter((panel) => !off.has(panel)) });
    });
    this.divide(upper);
    this.divide(lower);
  }

  /** Which spans belong to the closed set that is worth most above a rate. */
  #worthMore(hidden: readonly LookSpan[], ends: readonly number[], rate: number): ReadonlySet<number> {
    const worth = hidden.map((span, i) => {
      const piece = this.#piece(span, span.from, ends[i] as number);
      return piece.weight - rate * piece.minutes;
    });
    const local = new Map<number, number>();
    const needs = hidden.map(({ missing }) =>
      missing.map((panel) => {
        const known = local.get(panel) ?? local.size;
        local.set(panel, known);
        return known;
      }),
    );
    const cost = [...local.keys()].map((panel) => (this.#panelMinutes[panel] as number) * rate);
    return new Set(mostWorthSet(worth, needs, cost));
  }

  /** One span alone: as many looks as raise its chance per minute; the others lie open then. */
  #divideOne(span: LookSpan): void {
    const { looks } = this.#group(span);
    let weight = 0;
    let { minutes } = totals(this.#groups, [{ ...span, to: span.from }], this.#panelMinutes);
    let to = span.from;
    for (; to < span.to; to++) {
      const look = looks[to] as Block;
      if (to > span.from && look.weight * minutes <= weight * look.minutes) break;
      weight += look.weight;
      minutes += look.minutes;
    }
    this.#sets.push({ weight, minutes, spans: [{ ...span, to }] });
    const rest = { ...span, from: to, missing: [] };
    if (to < span.to) this.#open.push({ span: rest, afterSets: this.#sets.length });
  }

  /** The sets, with open looks before the first set that is worth less, in as few pieces as will do. */
  inOrder(): SidneySet[] {
    const before: SidneySet[][] = Array.from({ length: this.#sets.length + 1 }, () => []);
    for (const { span, afterSets } of this.#open) {
      let { from } = span;
      for (let s = afterSets; from < span.to; s++) {
        s = this.#worthLessFrom(s, this.#group(span).looks[from] as Block);
        const set = this.#sets[s];
        const to = set ? worthMoreUpTo(this.#group(span), { ...span, from }, rateOf(set)) : span.to;
        if (to > from) before[s]?.push(this.#piece(span, from, to));
        from = to;
      }
    }
    return before.flatMap((pieces, s) => {
      const set = this.#sets[s];
      const open = pieces.length > 1 ? [this.#shuffled(pieces)] : pieces;
      return set ? [...open, set] : open;
    });
  }

  /** The first set from `from` on that is worth less per minute than a look; the sets fall in worth. */
  #worthLessFrom(from: number, look: Block): number {
    let low = from;
    let high = this.#sets.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (look.weight > rateOf(this.#sets[middle] as SidneySet) * look.minutes) high = middle;
      else low = middle + 1;
    }
    return low;
  }

  /** Pieces of several groups as one row of looks, worthiest first. */
  #shuffled(pieces: readonly SidneySet[]): SidneySet {
    const looks: Block[] = [];
    for (const { spans } of pieces) {
      const span = spans[0] as LookSpan;
      const group = this.#group(span);
      for (let i = span.from; i < span.to; i++) looks.push(group.looks[i] as Block);
    }
    const row = jobRow(looks.sort((a, b) => -compareWorth(a, b) || a.job - b.job));
    const { weight, minutes } = rowBlock(row, 0, looks.length);
    return { weight, minutes, spans: [], row };
  }

  #piece(span: LookSpan, from: number, to: number): SidneySet {
    const { looks, weightUpTo, minutesUpTo } = this.#group(span);
    const only = to === from + 1 ? (looks[from] as Block) : null;
    return {
      weight: only?.weight ?? (weightUpTo[to] as number) - (weightUpTo[from] as number),
      minutes: only?.minutes ?? (minutesUpTo[to] as number) - (minutesUpTo[from] as number),
      spans: [{ ...span, from, to }],
    };
  }

  #group({ group }: LookSpan): LookGroup {
    return this.#groups[group] as LookGroup;
  }
}

const rateOf = ({ weight, minutes }: SidneySet): number =>
  minutes > 0 ? weight / minutes : Number.POSITIVE_INFINITY;

/** Where in a span the looks stop being worth more than a rate. */
function worthMoreUpTo({ looks }: LookGroup, { from, to }: LookSpan, rate: number): number {
  let low = from;
  let high = to;
  while (low < high) {
    const middle = (low + high) >> 1;
    const look = looks[middle] as { weight: number; minutes: number };
    if (look.weight > rate * look.minutes) low = middle + 1;
    else high = middle;
  }
  return low;
}

function totals(
  groups: readonly LookGroup[],
  spans: readonly LookSpan[],
  panelMinutes: readonly number[],
): { weight: number; minutes: number } {
  let weight = 0;
  let minutes = 0;
  for (const panel of new Set(spans.flatMap(({ missing }) => missing)))
    minutes += panelMinutes[panel] as number;
  for (const { group, from, to } of spans) {
    const { weightUpTo, minutesUpTo } = groups[group] as LookGroup;
    weight += (weightUpTo[to] as number) - (weightUpTo[from] as number);
    minutes += (minutesUpTo[to] as number) - (minutesUpTo[from] as number);
  }
  return { weight, minutes };
}
