import { logSumExp } from '../quantity/sums.ts';
import { type Hypotheses, layHypotheses } from './hypotheses.ts';

/** Enough places to say what one reading or one test would tell; the answer itself stays on the fine cells. */
export const mostCoarseCells = 200;

/**
 * The same hypotheses on fewer cells, each some whole cells of the fine ones.
 * @example
 * coarseHypotheses(layHypotheses(Float64Array.from({ length: 401 }, (_, i) => i), [])).cellCount // => 200
 */
export function coarseHypotheses(fine: Hypotheses): Hypotheses {
  return layHypotheses(
    Float64Array.from(bordersOf(fine), (border) => fine.cellEdgesMm[border] as number),
    fine.components,
  );
}

function bordersOf({ cellCount }: Hypotheses): number[] {
  const count = Math.min(mostCoarseCells, cellCount);
  return Array.from({ length: count + 1 }, (_, i) => Math.round((i * cellCount) / count));
}

/**
 * A row of log probabilities on the fine cells, added up on the coarse ones.
 * @example
 * coarseLogs(layHypotheses(new Float64Array([0, 1]), []), new Float64Array(6))[0] // => 0
 */
export function coarseLogs(fine: Hypotheses, row: Float64Array): Float64Array {
  const borders = bordersOf(fine);
  const count = borders.length - 1;
  const { cellCount, classes } = fine;
  const rest = fine.size - classes.length * cellCount;
  const answer = new Float64Array(classes.length * count + rest);
  for (let k = 0; k < classes.length; k++)
    for (let i = 0; i < count; i++) {
      const from = k * cellCount + (borders[i] as number);
      const to = k * cellCount + (borders[i + 1] as number);
      answer[k * count + i] = to - from === 1 ? (row[from] as number) : logSumExp(row.subarray(from, to));
    }
  answer.set(row.subarray(classes.length * cellCount), classes.length * count);
  return answer;
}

/**
 * Probabilities on the fine cells, added up on the coarse ones.
 * @example
 * coarseProbability(layHypotheses(new Float64Array([0, 1]), []), Float64Array.of(0.5, 0.1, 0.1, 0.1, 0.1, 0.1))[0] // => 0.5
 */
export function coarseProbability(fine: Hypotheses, probability: Float64Array): Float64Array {
  return coarseLogs(fine, probability.map(Math.log)).map(Math.exp);
}
