import { type Block, openBlock } from './block.ts';
import { mostWorthSet } from './most-worth-set.ts';
import type { LookGroup, Yard, YardPanel } from './yard.ts';

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
  /** Set instead of spans where it is looks that lie open, worthiest first. */
  readonly open?: Block;
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
 * sidneySets(layYard([{ id: 'a', panelIds: ['panel:tread'], probability: 0.5, quality: 1, minutes: 3 }], sample.map.panels, new Set()), [{ group: 0, from: 0, to: 1, missing: [1] }])[0].minutes // => 6
 */
export function sidneySets(yard: LaidWork, spans: readonly LookSpan[]): SidneySet[] {
  const division = new Division(yard);
  division.divide(spans);
  return division.inOrder();
}

/** What a division needs of a yard. */
export type LaidWork = Pick<Yard, 'groups' | 'jobs' | 'panels'>;

class Division {
  readonly #yard: LaidWork;
  /** Sets behind panels, in order. */
  readonly #sets: SidneySet[] = [];
  /** Looks that lie open once so many of the sets are done. */
  readonly #open: { readonly span: LookSpan; readonly afterSets: number }[] = [];

  constructor(yard: LaidWork) {
    this.#yard = yard;
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
    const whole = totals(this.#yard, hidden);
    const rate = whole.minutes > 0 ? whole.weight / whole.minutes : Number.POSITIVE_INFINITY;
    const ends = hidden.map((span) => worthMoreUpTo(this.#group(span), span, rate));
    const chosen = rate < Number.POSITIVE_INFINITY ? this.#worthMore(hidden, ends, rate) : new Set<number>();
    const upper: LookSpan[] = [];
    const lower: LookSpan[] = [];
    hidden.forEach((span, i) => {
      const end = ends[i] as number;
      if (chosen.has(i) && end > span.from) upper.push({ ...span, to: end });
    });
    const first = totals(this.#yard, upper);
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
      const { weightUpTo, minutesUpTo } = this.#group(span);
      const [from, to] = [span.from, ends[i] as number];
      const minutes = (minutesUpTo[to] as number) - (minutesUpTo[from] as number);
      return (weightUpTo[to] as number) - (weightUpTo[from] as number) - rate * minutes;
    });
    const local = new Map<number, number>();
    const needs = hidden.map(({ missing }) =>
      missing.map((panel) => {
        const known = local.get(panel) ?? local.size;
        local.set(panel, known);
        return known;
      }),
    );
    const cost = [...local.keys()].map((panel) => (this.#yard.panels[panel] as YardPanel).minutes * rate);
    return new Set(mostWorthSet(worth, needs, cost));
  }

  /** One span alone: as many looks as raise its chance per minute; the others lie open then. */
  #divideOne(span: LookSpan): void {
    const { looks } = this.#group(span);
    let weight = 0;
    let { minutes } = totals(this.#yard, [{ ...span, to: span.from }]);
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

  /**
   * The sets, each open look before the first set that is worth less per minute: jobs are numbered by
   * falling worth and the sets fall in worth, so one walk through both does.
   */
  inOrder(): SidneySet[] {
    const sets = this.#sets;
    const rows: Block[][] = Array.from({ length: sets.length + 1 }, () => []);
    let next = 0;
    this.#eachOpen((look, afterSets) => {
      while (next < sets.length && !isWorthMore(look, sets[next] as SidneySet)) next++;
      rows[Math.max(next, afterSets)]?.push(look);
    });
    return rows.flatMap((looks, s) => {
      const set = sets[s];
      const open = looks.length > 0 ? [openSet(looks)] : [];
      return set ? [...open, set] : open;
    });
  }

  /** Goes through the open looks by number; where they are many, without sorting. */
  #eachOpen(visit: (look: Block, afterSets: number) => void): void {
    const { jobs } = this.#yard;
    let count = 0;
    for (const { span } of this.#open) count += span.to - span.from;
    if (count * 8 < jobs.length) {
      const looks = this.#open.flatMap(({ span, afterSets }) =>
        this.#group(span)
          .looks.slice(span.from, span.to)
          .map((look) => ({ look, afterSets })),
      );
      for (const { look, afterSets } of looks.sort((a, b) => a.look.job - b.look.job)) visit(look, afterSets);
      return;
    }
    const afterBy = new Int32Array(jobs.length).fill(-1);
    for (const { span, afterSets } of this.#open) {
      const { looks } = this.#group(span);
      for (let i = span.from; i < span.to; i++) afterBy[(looks[i] as Block).job] = afterSets;
    }
    for (let job = 0; job < jobs.length; job++) {
      const afterSets = afterBy[job] as number;
      if (afterSets >= 0) visit(jobs[job] as Block, afterSets);
    }
  }

  #group({ group }: LookSpan): LookGroup {
    return this.#yard.groups[group] as LookGroup;
  }
}

const isWorthMore = (look: Block, { weight, minutes }: SidneySet): boolean =>
  minutes > 0 && look.weight > (weight / minutes) * look.minutes;

function openSet(looks: readonly Block[]): SidneySet {
  const open = openBlock(looks);
  return { weight: open.weight, minutes: open.minutes, spans: [], open };
}

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
  { groups, panels }: LaidWork,
  spans: readonly LookSpan[],
): { weight: number; minutes: number } {
  let weight = 0;
  let minutes = 0;
  for (const panel of new Set(spans.flatMap(({ missing }) => missing)))
    minutes += (panels[panel] as YardPanel).minutes;
  for (const { group, from, to } of spans) {
    const { weightUpTo, minutesUpTo } = groups[group] as LookGroup;
    weight += (weightUpTo[to] as number) - (weightUpTo[from] as number);
    minutes += (minutesUpTo[to] as number) - (minutesUpTo[from] as number);
  }
  return { weight, minutes };
}
