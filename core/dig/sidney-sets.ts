import { compareWorth } from './block.ts';
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
}

/** Two chances per minute nearer than this are the same: rounding of the flow. */
const sameRate = 1e-11;

/**
 * Sidney's decomposition: the work falls into sets of falling chance per minute that follow one another
 * in some best order (J. B. Sidney, "Decomposition algorithms for single-machine sequencing with
 * precedence relations and deferral costs", Operations Research 23, 1975; from memory). Found by
 * dividing: whatever is worth more than the mean chance per minute of the whole, as a closed set, goes
 * before the rest, and each half is divided on; a set nothing of which is worth more than its mean is
 * one of Sidney's. Looks without missing panels come one by one.
 * @example
 * sidneySets([{ panels: [0], looks: [jobBlock(0, 0.5, 3)], weightUpTo: [0, 0.5], minutesUpTo: [0, 3] }], [{ group: 0, from: 0, to: 1, missing: [0] }], [7])[0].minutes // => 10
 */
export function sidneySets(
  groups: readonly LookGroup[],
  spans: readonly LookSpan[],
  panelMinutes: readonly number[],
): SidneySet[] {
  const hidden: LookSpan[] = [];
  const open: SidneySet[] = [];
  for (const span of spans) {
    if (span.to <= span.from) continue;
    if (span.missing.length > 0) hidden.push(span);
    else addOneByOne(groups, span, open);
  }
  open.sort((a, b) => -compareWorth(a, b));
  const sets = hidden.length > 0 ? divided(groups, hidden, panelMinutes) : [];
  return open.length > 0 ? mergeByWorth(sets, open) : sets;
}

function addOneByOne(groups: readonly LookGroup[], span: LookSpan, into: SidneySet[]): void {
  const { looks } = groups[span.group] as LookGroup;
  for (let i = span.from; i < span.to; i++) {
    const { weight, minutes } = looks[i] as { weight: number; minutes: number };
    into.push({ weight, minutes, spans: [{ ...span, from: i, to: i + 1 }] });
  }
}

function divided(
  groups: readonly LookGroup[],
  hidden: readonly LookSpan[],
  panelMinutes: readonly number[],
): SidneySet[] {
  const whole = totals(groups, hidden, panelMinutes);
  if (hidden.length === 1) return divideOne(groups, hidden[0] as LookSpan, whole.setup);
  if (whole.minutes <= 0) return [{ ...whole, spans: hidden }];
  const rate = whole.weight / whole.minutes;
  const ends = hidden.map((span) => worthMoreUpTo(groups[span.group] as LookGroup, span, rate));
  const worth = hidden.map((span, i) =>
    worthAt(groups[span.group] as LookGroup, span.from, ends[i] as number, rate),
  );
  const local = new Map<number, number>();
  const needs = hidden.map(({ missing }) =>
    missing.map((panel) => {
      const known = local.get(panel);
      if (known !== undefined) return known;
      local.set(panel, local.size);
      return local.size - 1;
    }),
  );
  const cost = [...local.keys()].map((panel) => (panelMinutes[panel] as number) * rate);
  const chosen = new Set(mostWorthSet(worth, needs, cost));
  const upper: LookSpan[] = [];
  hidden.forEach((span, i) => {
    if (chosen.has(i) && (ends[i] as number) > span.from) upper.push({ ...span, to: ends[i] as number });
  });
  const first = totals(groups, upper, panelMinutes);
  if (first.weight <= rate * first.minutes * (1 + sameRate)) return [{ ...whole, spans: hidden }];
  const off = new Set(upper.flatMap(({ missing }) => missing));
  const lower: LookSpan[] = [];
  hidden.forEach((span, i) => {
    const from = chosen.has(i) ? (ends[i] as number) : span.from;
    lower.push({ ...span, from, missing: span.missing.filter((panel) => !off.has(panel)) });
  });
  return [...divided(groups, upper, panelMinutes), ...sidneySets(groups, lower, panelMinutes)];
}

/** One span alone: as many looks as raise its chance per minute, the others one by one. */
function divideOne(groups: readonly LookGroup[], span: LookSpan, setup: number): SidneySet[] {
  const { looks } = groups[span.group] as LookGroup;
  let weight = 0;
  let minutes = setup;
  let to = span.from;
  for (; to < span.to; to++) {
    const look = looks[to] as { weight: number; minutes: number };
    if (to > span.from && look.weight * minutes <= weight * look.minutes) break;
    weight += look.weight;
    minutes += look.minutes;
  }
  const sets: SidneySet[] = [{ weight, minutes, spans: [{ ...span, to }] }];
  addOneByOne(groups, { ...span, from: to, missing: [] }, sets);
  return sets;
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

function worthAt(group: LookGroup, from: number, to: number, rate: number): number {
  const weight = (group.weightUpTo[to] as number) - (group.weightUpTo[from] as number);
  return weight - rate * ((group.minutesUpTo[to] as number) - (group.minutesUpTo[from] as number));
}

function totals(
  groups: readonly LookGroup[],
  spans: readonly LookSpan[],
  panelMinutes: readonly number[],
): { weight: number; minutes: number; setup: number } {
  let weight = 0;
  let setup = 0;
  let minutes = 0;
  for (const panel of new Set(spans.flatMap(({ missing }) => missing)))
    setup += panelMinutes[panel] as number;
  for (const { group, from, to } of spans) {
    const { weightUpTo, minutesUpTo } = groups[group] as LookGroup;
    weight += (weightUpTo[to] as number) - (weightUpTo[from] as number);
    minutes += (minutesUpTo[to] as number) - (minutesUpTo[from] as number);
  }
  return { weight, minutes: minutes + setup, setup };
}

function mergeByWorth(sets: readonly SidneySet[], open: readonly SidneySet[]): SidneySet[] {
  const merged: SidneySet[] = [];
  let s = 0;
  let o = 0;
  while (s < sets.length || o < open.length) {
    const set = sets[s];
    const look = open[o];
    if (set && (!look || compareWorth(set, look) > 0)) {
      merged.push(set);
      s++;
    } else if (look) {
      merged.push(look);
      o++;
    }
  }
  return merged;
}
