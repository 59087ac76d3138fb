import type { FaultResponse } from './fault-response.ts';
import { globalNodes, logDensityAt, type StrengthGrid } from './fault-strength.ts';
import { logScore, type ShownScore } from './shown-score.ts';

/** One reading as a fault bends it, and what was shown. */
export interface ReadingTerm {
  readonly response: FaultResponse;
  readonly score: ShownScore;
}

/** Nodes set around the best fit: at -8 to 8 half spreads. */
const localNodes = 17;
const middleNode = (localNodes - 1) / 2;
const nodeCount = globalNodes + localNodes;

/** A node this far below the best one adds nothing that could be seen, in nats. */
const leastDrop = -25;

/** Log-likelihood per station with the fault's strength integrated out, and the best fit met on the way. */
export interface StrengthMarginal {
  readonly logLikelihood: Float64Array;
  /** Largest sum of reading scores over all stations and strengths. */
  readonly bestFit: number;
}

/**
 * Integrates the strength of the fault out of the joint likelihood of all readings (the fault's
 * resistance is one and the same in each): trapezoid over ln(theta) on 24 nodes over the whole range and
 * 17 around the strength that the sharpest reading asks for. A fixed grid alone would pass between the
 * values a sharp meter allows and flatten the answer. O(stations x 41 x readings).
 * @example
 * strengthMarginal([], strengthGrid('open'), 1).logLikelihood[0].toFixed(6) // => '0.000000'
 */
export function strengthMarginal(
  terms: readonly ReadingTerm[],
  grid: StrengthGrid,
  stationCount: number,
): StrengthMarginal {
  const logLikelihood = new Float64Array(stationCount);
  if (terms.length === 0) return { logLikelihood, bestFit: 0 };
  const lnTheta = new Float64Array(nodeCount);
  const theta = new Float64Array(nodeCount);
  const scores = new Float64Array(nodeCount);
  const local = new Float64Array(localNodes);
  const globalLogs = grid.lnNodes.map((ln) => logDensityAt(grid, ln));
  const globalThetas = grid.lnNodes.map(Math.exp);
  const nodeLogs = new Float64Array(nodeCount);
  let bestFit = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < stationCount; i++) {
    if (i > 0 && isSameAsLast(terms, i)) {
      logLikelihood[i] = logLikelihood[i - 1] as number;
      continue;
    }
    setLocalNodes(terms, grid, i, local);
    mergeNodes(grid, local, globalLogs, globalThetas, lnTheta, theta, nodeLogs);
    scores.fill(0);
    for (const term of terms) addScores(term, i, theta, scores);
    let top = Number.NEGATIVE_INFINITY;
    for (let k = 0; k < nodeCount; k++) {
      const fit = scores[k] as number;
      if (fit > bestFit) bestFit = fit;
      scores[k] = fit + (nodeLogs[k] as number);
      if ((scores[k] as number) > top) top = scores[k] as number;
    }
    let sum = 0;
    let before = (scores[0] as number) - top > leastDrop ? Math.exp((scores[0] as number) - top) : 0;
    for (let k = 1; k < nodeCount; k++) {
      const drop = (scores[k] as number) - top;
      const here = drop > leastDrop ? Math.exp(drop) : 0;
      sum += (before + here) * ((lnTheta[k] as number) - (lnTheta[k - 1] as number));
      before = here;
    }
    logLikelihood[i] = top + Math.log(sum / 2);
  }
  return { logLikelihood, bestFit };
}

/** Series faults read alike all along a link; there is no need to integrate again. */
function isSameAsLast(terms: readonly ReadingTerm[], i: number): boolean {
  for (const { response } of terms) {
    if (response.numerator[i] !== response.numerator[i - 1]) return false;
    if (response.offset[i] !== response.offset[i - 1]) return false;
  }
  return true;
}

/** Nodes where the sharpest figure wants them; an even spread about the middle when no figure wants any. */
function setLocalNodes(
  terms: readonly ReadingTerm[],
  grid: StrengthGrid,
  i: number,
  local: Float64Array,
): void {
  let lnBest = (grid.lnLeast + grid.lnMost) / 2;
  let tightest = (grid.lnMost - grid.lnLeast) / 8;
  for (const { response, score } of terms) {
    if (score.kind !== 'figure') continue;
    const numerator = response.numerator[i] as number;
    const offset = response.offset[i] as number;
    const fitted = numerator / (response.sound - score.value) - offset;
    if (!(fitted > 0)) continue;
    const lnFitted = Math.log(fitted);
    if (lnFitted < grid.lnLeast || lnFitted > grid.lnMost) continue;
    const spread = ((fitted + offset) ** 2 * score.spread) / (Math.abs(numerator) * fitted);
    if (spread < tightest) {
      tightest = spread;
      lnBest = lnFitted;
    }
  }
  for (let k = 0; k < localNodes; k++) {
    const ln = lnBest + (k - middleNode) * 0.5 * tightest;
    local[k] = Math.min(grid.lnMost, Math.max(grid.lnLeast, ln));
  }
}

function mergeNodes(
  grid: StrengthGrid,
  local: Float64Array,
  globalLogs: Float64Array,
  globalThetas: Float64Array,
  lnTheta: Float64Array,
  theta: Float64Array,
  nodeLogs: Float64Array,
): void {
  let g = 0;
  let l = 0;
  // Local nodes are evenly spaced but for the ends of the range, so each theta follows from the one before.
  const ratio = Math.exp((local[middleNode + 1] as number) - (local[middleNode] as number));
  const step = (local[middleNode + 1] as number) - (local[middleNode] as number);
  let lastLn = Number.NaN;
  let lastTheta = 0;
  for (let k = 0; k < nodeCount; k++) {
    const wide = g < globalNodes ? (grid.lnNodes[g] as number) : Number.POSITIVE_INFINITY;
    const near = l < localNodes ? (local[l] as number) : Number.POSITIVE_INFINITY;
    if (wide <= near) {
      lnTheta[k] = wide;
      theta[k] = globalThetas[g] as number;
      nodeLogs[k] = globalLogs[g] as number;
      g++;
    } else {
      lnTheta[k] = near;
      const isNext = Math.abs(near - lastLn - step) < 1e-12 * Math.abs(near);
      lastTheta = isNext ? lastTheta * ratio : Math.exp(near);
      lastLn = near;
      theta[k] = lastTheta;
      nodeLogs[k] = logDensityAt(grid, near);
      l++;
    }
  }
}

function addScores(
  { response, score }: ReadingTerm,
  i: number,
  theta: Float64Array,
  scores: Float64Array,
): void {
  const numerator = response.numerator[i] as number;
  const offset = response.offset[i] as number;
  if (score.kind !== 'figure') {
    for (let k = 0; k < nodeCount; k++) {
      const shown = response.sound - numerator / ((theta[k] as number) + offset);
      scores[k] = (scores[k] as number) + logScore(score, shown);
    }
    return;
  }
  const scale = Math.SQRT1_2 / score.spread;
  const miss = (response.sound - score.value) * scale;
  const bend = numerator * scale;
  const { clip } = score;
  for (let k = 0; k < nodeCount; k++) {
    const z = miss - bend / ((theta[k] as number) + offset);
    const square = z * z;
    scores[k] = (scores[k] as number) - (square < clip ? square : clip);
  }
}
