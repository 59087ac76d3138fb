import { type Evidence, placeEvidence } from './hypotheses.ts';
import { distanceToRanges, joinRanges, type StationRange } from './station-ranges.ts';

/** Chance that moving a place changes the reading: fault there, next to it, elsewhere (judgement). */
export const moveChance = { there: 0.6, beside: 0.2, elsewhere: 0.02 } as const;

/** Wire this near to the moved place moves along with it (judgement). */
export const besideMm = 200;

/**
 * How alike the tries at one place are: their outcomes follow a beta-binomial law with this many
 * pseudo-tries, so that ten tries at one place never weigh like ten separate tests (judgement).
 */
export const pseudoTries = 2;

/**
 * Log-probability of `changed` out of `tried` under a beta-binomial law with mean `chance`, without
 * the count of orders, which is the same for every place. One try gives exactly `chance`.
 * @example
 * logMoved(1, 1, 0.6) // => Math.log(0.6)
 */
export function logMoved(changed: number, tried: number, chance: number): number {
  const yes = pseudoTries * chance;
  const no = pseudoTries - yes;
  let log = 0;
  for (let i = 0; i < changed; i++) log += Math.log(yes + i);
  for (let i = 0; i < tried - changed; i++) log += Math.log(no + i);
  for (let i = 0; i < tried; i++) log -= Math.log(pseudoTries + i);
  return log;
}

/**
 * A move test: loom bent, pressed or tugged at a place, and the reading or symptom changed in some of
 * the tries. No change is only weak evidence against the place.
 * @example
 * moveEvidence([{ fromMm: 0, toMm: 10 }], 0, 1)(layHypotheses(new Float64Array([0, 10, 900]), []))[0] // => Math.log(0.4)
 */
export function moveEvidence(ranges: readonly StationRange[], changed: number, tried: number): Evidence {
  const moved = joinRanges(ranges);
  const there = logMoved(changed, tried, moveChance.there);
  const beside = logMoved(changed, tried, moveChance.beside);
  const elsewhere = logMoved(changed, tried, moveChance.elsewhere);
  const at = (stationMm: number): number => {
    const distanceMm = distanceToRanges(moved, stationMm);
    if (distanceMm === 0) return there;
    return distanceMm <= besideMm ? beside : elsewhere;
  };
  return (hypotheses) =>
    placeEvidence(
      hypotheses,
      (cell) =>
        at(((hypotheses.cellEdgesMm[cell] as number) + (hypotheses.cellEdgesMm[cell + 1] as number)) / 2),
      (component) => at(component.stationMm),
      elsewhere,
    );
}
