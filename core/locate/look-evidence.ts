import type { NodeId } from '../quantity/id.ts';
import { type Evidence, placeEvidence } from './hypotheses.ts';
import { coveredShare, distanceToRanges, joinRanges, type StationRange } from './station-ranges.ts';

/** No look is perfect: at least one in a thousand is missed, so that no place is ever ruled out for good. */
export const bestLookQuality = 0.999;

/** Damage that is not ours makes the ground beside it this much likelier at its edge (judgement). */
export const neighbourRaise = 0.5;

/** The raise falls by e over this many mm of wire (judgement: about one clip gap). */
export const neighbourReachMm = 150;

/**
 * A look that found the stretch sound. With look quality q the chance of a fault there falls from p
 * to p(1 - q)/(1 - pq) (Bayes' rule; search theory, B. O. Koopman 1946, from memory).
 * @example
 * soundLook([{ fromMm: 0, toMm: 10 }], 0.8)(layHypotheses(new Float64Array([0, 10, 20]), []))[0] // => Math.log(0.2)
 */
export function soundLook(ranges: readonly StationRange[], lookQuality: number): Evidence {
  const seen = joinRanges(ranges);
  const quality = Math.min(bestLookQuality, lookQuality);
  return (hypotheses) =>
    placeEvidence(
      hypotheses,
      (cell) => {
        const fromMm = hypotheses.cellEdgesMm[cell] as number;
        const toMm = hypotheses.cellEdgesMm[cell + 1] as number;
        return Math.log1p(-quality * coveredShare(seen, fromMm, toMm));
      },
      () => 0,
      0,
    );
}

/**
 * A look that found damage which is not the cause: for our fault the stretch was seen sound, and the
 * ground beside it rises a little, as what harmed one place is often at work next to it.
 * @example
 * otherDamage([{ fromMm: 0, toMm: 10 }], 0.8)(layHypotheses(new Float64Array([0, 10, 10.001]), []))[1] // => Math.log(1.499998)
 */
export function otherDamage(ranges: readonly StationRange[], lookQuality: number): Evidence {
  const seen = joinRanges(ranges);
  const sound = soundLook(ranges, lookQuality);
  return (hypotheses) => {
    const raised = placeEvidence(
      hypotheses,
      (cell) => {
        const middle =
          ((hypotheses.cellEdgesMm[cell] as number) + (hypotheses.cellEdgesMm[cell + 1] as number)) / 2;
        const distanceMm = distanceToRanges(seen, middle);
        return distanceMm > 0 ? Math.log1p(neighbourRaise * Math.exp(-distanceMm / neighbourReachMm)) : 0;
      },
      () => 0,
      0,
    );
    const missed = sound(hypotheses);
    return raised.map((value, i) => value + (missed[i] as number));
  };
}

/**
 * Plugs that were parted, looked into and cleared: the chance that their own metal is at fault falls as
 * for a stretch seen sound. Says nothing about the wire.
 * @example
 * plugLook(['node:middle'], 0.5)(layHypotheses(new Float64Array([0, 10]), [{ nodeId: 'node:middle', stationMm: 5, place: 'plug' }]))[5] // => Math.log(0.5)
 */
export function plugLook(nodeIds: readonly NodeId[], lookQuality: number): Evidence {
  const quality = Math.min(bestLookQuality, lookQuality);
  return (hypotheses) =>
    placeEvidence(
      hypotheses,
      () => 0,
      ({ nodeId, place }) => (place === 'plug' && nodeIds.includes(nodeId) ? Math.log1p(-quality) : 0),
      0,
    );
}

/**
 * The fault was found: everything outside the found stretches is over. Several finds of one job are
 * one piece of evidence, so that two of them do not rule each other out.
 * @example
 * faultFound([{ fromMm: 0, toMm: 10 }])(layHypotheses(new Float64Array([0, 10, 20]), []))[1] // => -Infinity
 */
export function faultFound(ranges: readonly StationRange[]): Evidence {
  const found = joinRanges(ranges);
  return (hypotheses) =>
    placeEvidence(
      hypotheses,
      (cell) =>
        Math.log(
          coveredShare(
            found,
            hypotheses.cellEdgesMm[cell] as number,
            hypotheses.cellEdgesMm[cell + 1] as number,
          ),
        ),
      () => Number.NEGATIVE_INFINITY,
      Number.NEGATIVE_INFINITY,
    );
}
