import type { Block } from './block.ts';
import { mostWorthSet } from './most-worth-set.ts';

/** Part of a group's looks, from one to before another, worthiest first, behind panels still on. */
export interface LookSpan {
  readonly group: number;
  readonly looks: readonly Block[];
  /** Panels still on that hide it. */
  readonly missing: readonly number[];
}

/** A set of work that can be done as a whole: some panels, and of some groups the first few looks. */
export interface DenseSet {
  /** Indices into the spans given, each with how many of its looks belong to the set. */
  readonly members: readonly { readonly span: number; readonly count: number }[];
  readonly weight: number;
  readonly minutes: number;
}

/** Rounds of Dinkelbach's method; it takes three to six. */
const mostRounds = 50;

/**
 * The set of panels and looks with the greatest chance per minute that can be done as a whole, by
 * Dinkelbach's method (W. Dinkelbach, "On nonlinear fractional programming", Management Science 13,
 * 1967; from memory): at a rate in chance per minute each look is worth its chance less its minutes
 * at that rate; the best set at the rate gives the next rate, until no set is worth more than nothing.
 * @example
 * densestSet([{ group: 0, looks: [jobBlock(0, 0.5, 3)], missing: [0] }], [7]).minutes // => 10
 */
export function densestSet(spans: readonly LookSpan[], panelMinutes: readonly number[]): DenseSet {
  let best = spans
    .map((_, i) => worthiestAlone(spans, panelMinutes, i))
    .reduce((a, b) => (b.weight * a.minutes > a.weight * b.minutes ? b : a));
  for (let round = 0; round < mostRounds && best.minutes > 0; round++) {
    const rate = best.weight / best.minutes;
    const worth = spans.map(({ looks }) => worthAt(looks, rate));
    const chosen = mostWorthSet(
      worth,
      spans.map(({ missing }) => missing),
      panelMinutes.map((minutes) => minutes * rate),
    );
    if (chosen.length === 0) break;
    const next = gather(spans, panelMinutes, chosen, rate);
    if (next.weight * best.minutes <= best.weight * next.minutes * (1 + 1e-12)) break;
    best = next;
  }
  return best;
}

function worthAt(looks: readonly Block[], rate: number): number {
  let worth = 0;
  for (const look of looks) worth += Math.max(0, look.weight - rate * look.minutes);
  return worth;
}

/** The chosen spans with every look worth more than the rate, and the panels they need. */
function gather(
  spans: readonly LookSpan[],
  panelMinutes: readonly number[],
  chosen: readonly number[],
  rate: number,
): DenseSet {
  const panels = new Set(chosen.flatMap((i) => (spans[i] as LookSpan).missing));
  let weight = 0;
  let minutes = 0;
  for (const panel of panels) minutes += panelMinutes[panel] as number;
  const members = chosen.map((span) => {
    const looks = (spans[span] as LookSpan).looks;
    let count = 0;
    while (count < looks.length && (looks[count] as Block).weight > rate * (looks[count] as Block).minutes) {
      weight += (looks[count] as Block).weight;
      minutes += (looks[count] as Block).minutes;
      count++;
    }
    return { span, count };
  });
  return { members: members.filter(({ count }) => count > 0), weight, minutes };
}

/** One span by itself with as many looks as raise its chance per minute. */
function worthiestAlone(spans: readonly LookSpan[], panelMinutes: readonly number[], span: number): DenseSet {
  const { looks, missing } = spans[span] as LookSpan;
  let minutes = 0;
  for (const panel of missing) minutes += panelMinutes[panel] as number;
  let weight = 0;
  let count = 0;
  for (const look of looks) {
    if (count > 0 && look.weight * minutes <= weight * look.minutes) break;
    weight += look.weight;
    minutes += look.minutes;
    count++;
  }
  return { members: [{ span, count }], weight, minutes };
}
