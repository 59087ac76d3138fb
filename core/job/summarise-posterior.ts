import { credibleLength } from '../locate/credible-length.ts';
import { cumulate, medianStation, probabilityWithin } from '../locate/cumulative.ts';
import { componentAt, type Hypotheses, noneAt } from '../locate/hypotheses.ts';
import type { FaultClass } from '../map/kinds.ts';
import { compensatedSum } from '../quantity/sums.ts';
import type { PathStretch } from './path-stretches.ts';
import type { Posterior } from './ranking.ts';

/**
 * What the screens and the command line show of a posterior: per class, per stretch, per part, and the
 * curve. O(classes x cells + cells log cells).
 * @example
 * summarisePosterior(layHypotheses(new Float64Array([0, 10]), []), new Float64Array([0.4, 0.1, 0.1, 0.1, 0.2, 0.1]), []).noneOfThese // => 0.1
 */
export function summarisePosterior(
  hypotheses: Hypotheses,
  probability: Float64Array,
  stretches: readonly PathStretch[],
): Posterior {
  const { cellCount, cellEdgesMm, classes } = hypotheses;
  const cellProbability = new Float64Array(cellCount);
  const byClass: Partial<Record<FaultClass, number>> = {};
  classes.forEach((kind, k) => {
    const row = probability.subarray(k * cellCount, (k + 1) * cellCount);
    byClass[kind] = compensatedSum(row);
    for (let cell = 0; cell < cellCount; cell++) {
      cellProbability[cell] = (cellProbability[cell] as number) + (row[cell] as number);
    }
  });
  const components = hypotheses.components.map(({ nodeId }, i) => ({
    nodeId,
    probability: probability[componentAt(hypotheses, i)] as number,
  }));
  const noneOfThese = probability[noneAt(hypotheses)] as number;
  const curve = cumulate(cellEdgesMm, cellProbability);
  return {
    classes: {
      ...(byClass as Record<FaultClass, number>),
      component: compensatedSum(components.map((each) => each.probability)),
      'none-of-these': noneOfThese,
    },
    stretches: stretches.map(({ segmentId, fromMm, toMm }) => ({
      segmentId,
      fromMm,
      toMm,
      probability: probabilityWithin(curve, { fromMm, toMm }),
    })),
    components,
    noneOfThese,
    medianStationMm: medianStation(curve),
    credible80Mm: credibleLength(cellEdgesMm, cellProbability, 0.8),
    cellEdgesMm,
    cellProbability,
  };
}
