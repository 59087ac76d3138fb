import type { FaultClass } from '../map/kinds.ts';
import type { ComponentHypothesis, Evidence } from './hypotheses.ts';
import { componentAt, noneAt } from './hypotheses.ts';
import type { StationRange } from './station-ranges.ts';

/** Chance that the symptom does what the place of the fault says it should (judgement). */
export const isolationTrust = 0.95;

/** Classes whose symptom goes when the wire beyond a plug is cut off; an open only gets longer. */
const cutOffByUnplugging: ReadonlySet<FaultClass> = new Set([
  'short-to-ground',
  'short-to-supply',
  'wire-to-wire',
]);

/** Plugs or parts pulled apart while watching the symptom. */
export interface Unplugged {
  /** Wire that still hangs together with the end where the symptom is watched. */
  readonly watchedMm: readonly StationRange[];
  /** That end. */
  readonly watcherMm: number;
  /** Where things are apart. */
  readonly apartMm: readonly number[];
  readonly stays: boolean;
}

/**
 * Isolation by unplugging: a symptom that stays puts the fault on the watched side of what is apart, one
 * that goes puts it beyond; the contacts of a plug that was pulled stay undecided. Multiplied, never ruled
 * out.
 * @example
 * unplugEvidence({ watchedMm: [{ fromMm: 0, toMm: 10 }], watcherMm: 0, apartMm: [10], stays: true })(layHypotheses(new Float64Array([0, 10, 20]), []))[1] // => Math.log(0.05)
 */
export function unplugEvidence({ watchedMm, watcherMm, apartMm, stays }: Unplugged): Evidence {
  const keeps = Math.log(stays ? isolationTrust : 1 - isolationTrust);
  const loses = Math.log(stays ? 1 - isolationTrust : isolationTrust);
  const undecided = Math.log(0.5);
  const isWatched = (stationMm: number): boolean =>
    watchedMm.some(({ fromMm, toMm }) => fromMm <= stationMm && stationMm <= toMm);
  const ofComponent = ({ stationMm, place }: ComponentHypothesis): number => {
    if (place !== 'plug' && stationMm === watcherMm) return keeps;
    if (!apartMm.includes(stationMm)) return isWatched(stationMm) ? keeps : loses;
    // A plug pulled beyond another one is out of it altogether.
    const isBorder = watchedMm.some(({ fromMm, toMm }) => stationMm === fromMm || stationMm === toMm);
    return place === 'plug' && isBorder ? undecided : loses;
  };
  return (hypotheses) => {
    const row = new Float64Array(hypotheses.size).fill(undecided);
    const { cellCount, cellEdgesMm, classes } = hypotheses;
    classes.forEach((kind, k) => {
      if (!cutOffByUnplugging.has(kind)) return;
      for (let cell = 0; cell < cellCount; cell++) {
        const middle = ((cellEdgesMm[cell] as number) + (cellEdgesMm[cell + 1] as number)) / 2;
        row[k * cellCount + cell] = isWatched(middle) ? keeps : loses;
      }
    });
    hypotheses.components.forEach((component, i) => {
      row[componentAt(hypotheses, i)] = ofComponent(component);
    });
    row[noneAt(hypotheses)] = undecided;
    return row;
  };
}
