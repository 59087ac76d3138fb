import { cumulate, probabilityWithin } from '../locate/cumulative.ts';
import type { OpeningMove } from './rank-change.ts';
import type { DigStep, Ranking } from './ranking.ts';

/** Why one opening changed its place in the order, as figures before and after. */
export interface MoveReason {
  readonly why: /** The fault is likelier, or less likely, to be there than it was. */
    | 'likelier'
    | 'less-likely'
    /** It is reached in fewer minutes: something in its way is off, or comes off anyway. */
    | 'quicker'
    | 'slower'
    /** It is as it was; others changed. */
    | 'others';
  readonly before: number;
  readonly after: number;
}

/** Chances nearer than this are the same to a person, and so are minutes within a half. */
const sameChance = 0.01;
const sameMinutes = 0.5;

/**
 * Why an opening moved: the chance that the fault is where it looks, before and after; else the minutes it
 * takes. Chances are of its places, not of seeing it there. O(cells).
 * @example
 * moveReason(rank(sample.map, sample.job).value, rank(sample.map, sample.job).value, { step: rank(sample.map, sample.job).value.digPlan[0], before: 2, after: 1 }).why // => 'others'
 */
export function moveReason(before: Ranking, after: Ranking, { step }: OpeningMove): MoveReason {
  const was = chanceOf(before, step);
  const is = chanceOf(after, step);
  if (Math.abs(is - was) >= sameChance) {
    return { why: is > was ? 'likelier' : 'less-likely', before: was, after: is };
  }
  const minutesWas = minutesOf(before, step);
  const minutesIs = minutesOf(after, step);
  if (minutesWas !== null && minutesIs !== null && Math.abs(minutesIs - minutesWas) >= sameMinutes) {
    return { why: minutesIs < minutesWas ? 'quicker' : 'slower', before: minutesWas, after: minutesIs };
  }
  return { why: 'others', before: was, after: is };
}

/** Chance that the fault is in the places an opening looks at. */
function chanceOf({ posterior }: Ranking, { look }: DigStep): number {
  const curve = cumulate(posterior.cellEdgesMm, posterior.cellProbability);
  const onWire = look.parts.reduce((sum, part) => sum + probabilityWithin(curve, part), 0);
  const plugs = new Set<string>(look.nodeIds);
  const inPlugs = posterior.components.filter(({ nodeId }) => plugs.has(nodeId));
  return onWire + inPlugs.reduce((sum, { probability }) => sum + probability, 0);
}

/** Minutes of the first opening that looks at any of the same places; null where none does. */
function minutesOf({ digPlan }: Ranking, { look }: DigStep): number | null {
  const same = digPlan.find((step) =>
    step.look.parts.some((part) =>
      look.parts.some((own) => Math.min(part.toMm, own.toMm) - Math.max(part.fromMm, own.fromMm) > 0.5),
    ),
  );
  return same?.minutes ?? null;
}
