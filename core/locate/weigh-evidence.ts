import { compensatedSum } from '../quantity/sums.ts';
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
  return shares(log) ?? shares(logPriorRow) ?? logPriorRow.map(() => 0);
}

/** Each one's share of the sum, from logs; null when nothing is possible. */
function shares(logs: Float64Array): Float64Array | null {
  let largest = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < logs.length; i++) if ((logs[i] as number) > largest) largest = logs[i] as number;
  if (largest === Number.NEGATIVE_INFINITY) return null;
  const row = new Float64Array(logs.length);
  for (let i = 0; i < logs.length; i++) row[i] = Math.exp((logs[i] as number) - largest);
  const total = compensatedSum(row);
  for (let i = 0; i < row.length; i++) row[i] = (row[i] as number) / total;
  return row;
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
