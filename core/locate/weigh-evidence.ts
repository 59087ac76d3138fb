import { logSumExp } from '../quantity/sums.ts';
import type { Evidence, Hypotheses } from './hypotheses.ts';

/**
 * Probability of every hypothesis: prior times the likelihood of each piece of evidence, worked in
 * logs, normalised to one. Where the evidence leaves nothing possible the answer is the prior's.
 * O(evidence x hypotheses).
 * @example
 * weighEvidence(layHypotheses(new Float64Array([0, 10]), []), new Float64Array([0, 0, 0, 0, 0, 0]), [])[0] // => 1 / 6
 */
export function weighEvidence(
  hypotheses: Hypotheses,
  logPriorRow: Float64Array,
  evidence: readonly Evidence[],
): Float64Array {
  const log = addEvidence(hypotheses, logPriorRow, evidence);
  const possible = logSumExp(log) > Number.NEGATIVE_INFINITY ? log : logPriorRow;
  const total = logSumExp(possible);
  return possible.map((value) => Math.exp(value - total));
}

/**
 * Log prior with the log-likelihood of each piece of evidence added, not normalised.
 * @example
 * addEvidence(layHypotheses(new Float64Array([0, 10]), []), new Float64Array(6), [])[0] // => 0
 */
export function addEvidence(
  hypotheses: Hypotheses,
  logPriorRow: Float64Array,
  evidence: readonly Evidence[],
): Float64Array {
  const log = logPriorRow.slice();
  for (const piece of evidence) {
    const row = piece(hypotheses);
    for (let i = 0; i < log.length; i++) log[i] = (log[i] as number) + (row[i] as number);
  }
  return log;
}
