import type { FaultClass } from '../map/kinds.ts';
import type { ComponentHypothesis, Evidence } from './hypotheses.ts';
import { componentAt, noneAt } from './hypotheses.ts';

/** Chance that the symptom does what the place of the fault says it should (judgement). */
export const isolationTrust = 0.95;

/** Classes whose symptom goes when the wire beyond a plug is cut off; an open only gets longer. */
const cutOffByUnplugging: ReadonlySet<FaultClass> = new Set([
  'short-to-ground',
  'short-to-supply',
  'wire-to-wire',
]);

/** A plug or part pulled apart while watching the symptom. */
export interface Unplugged {
  /** The pulled part nearest to where the symptom is watched. */
  readonly stationMm: number;
  /** The symptom is watched from the circuit's second end: supply or control unit sits there. */
  readonly watchedFromSecondEnd: boolean;
  readonly stays: boolean;
}

/**
 * Isolation by unplugging: a symptom that stays puts the fault on the watched side of the plug, one
 * that goes puts it beyond; the plug's own contacts stay undecided. Multiplied, never ruled out.
 * @example
 * unplugEvidence({ stationMm: 10, watchedFromSecondEnd: false, stays: true })(layHypotheses(new Float64Array([0, 10, 20]), []))[1] // => Math.log(0.05)
 */
export function unplugEvidence(test: Unplugged): Evidence {
  const keeps = Math.log(test.stays ? isolationTrust : 1 - isolationTrust);
  const loses = Math.log(test.stays ? 1 - isolationTrust : isolationTrust);
  const undecided = Math.log(0.5);
  const isWatchedSide = (stationMm: number) =>
    test.watchedFromSecondEnd ? stationMm > test.stationMm : stationMm < test.stationMm;
  const ofComponent = (component: ComponentHypothesis): number => {
    const watcher = test.watchedFromSecondEnd ? 'second-end' : 'first-end';
    if (component.place === watcher) return keeps;
    if (component.stationMm !== test.stationMm) return isWatchedSide(component.stationMm) ? keeps : loses;
    return component.place === 'plug' ? undecided : loses;
  };
  return (hypotheses) => {
    const row = new Float64Array(hypotheses.size).fill(undecided);
    const { cellCount, cellEdgesMm, classes } = hypotheses;
    classes.forEach((kind, k) => {
      if (!cutOffByUnplugging.has(kind)) return;
      for (let cell = 0; cell < cellCount; cell++) {
        const middle = ((cellEdgesMm[cell] as number) + (cellEdgesMm[cell + 1] as number)) / 2;
        row[k * cellCount + cell] = isWatchedSide(middle) ? keeps : loses;
      }
    });
    hypotheses.components.forEach((component, i) => {
      row[componentAt(hypotheses, i)] = ofComponent(component);
    });
    row[noneAt(hypotheses)] = undecided;
    return row;
  };
}
