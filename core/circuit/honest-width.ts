/**
 * The sharpest a place may be stated without measured plug contacts and wire, one standard deviation:
 * plug contact (5 milliohm is 0.1 m of 0.35 mm2) and wire tolerance set it, not the meter.
 */
export const honestFloorMm = 60;

/** The same where no unmeasured plug is passed: what the wire's drawn length leaves open alone (judgement). */
export const pluglessFloorMm = 40;

/**
 * Widens a likelihood along the wire until no peak is narrower than a standard deviation, by smoothing
 * the likelihood (not its logarithm) with a bell of what is missing. Stations rise. O(stations x width).
 * @example
 * widened([0, 10, 20], Float64Array.of(-50, 0, -50), 1000).map((value) => Math.round(10 * value)) // => Float64Array.of(-11, -11, -11)
 */
export function widened(
  stationsMm: ArrayLike<number>,
  logLikelihood: Float64Array,
  leastMm: number,
): Float64Array {
  const { spreadMm, peakMm } = widthsMm(stationsMm, logLikelihood);
  const missing = (widthMm: number): number => Math.sqrt(Math.max(0, leastMm ** 2 - widthMm ** 2));
  // One peak is judged by its spread; the more the spread exceeds the least, the more it is several peaks.
  const several = Math.min(1, (spreadMm - leastMm) / (2 * leastMm));
  const bellMm = spreadMm < leastMm ? missing(spreadMm) : several * missing(peakMm);
  if (!(bellMm > 0)) return logLikelihood;
  const count = logLikelihood.length;
  const top = logLikelihood.reduce((most, value) => Math.max(most, value), Number.NEGATIVE_INFINITY);
  const weights = cellWidths(stationsMm);
  const answer = new Float64Array(count);
  let first = 0;
  for (let i = 0; i < count; i++) {
    const atMm = stationsMm[i] as number;
    while (atMm - (stationsMm[first] as number) > 5 * bellMm) first++;
    let sum = 0;
    let norm = 0;
    for (let k = first; k < count; k++) {
      const z = ((stationsMm[k] as number) - atMm) / bellMm;
      if (z > 5) break;
      const share = Math.exp(-0.5 * z * z) * (weights[k] as number);
      norm += share;
      sum += share * Math.exp((logLikelihood[k] as number) - top);
    }
    // What smoothing cannot reach keeps its own low value.
    answer[i] = sum > 0 ? top + Math.log(sum / norm) : (logLikelihood[i] as number);
  }
  return answer;
}

/** Spread of a likelihood about its mean, and the width its peaks would have if they were equal bells. */
export interface LikelihoodWidths {
  readonly spreadMm: number;
  readonly peakMm: number;
}

/**
 * Width of a likelihood along the wire as a standard deviation, two ways: its spread about the mean, and
 * (integral L)^2 / integral L^2 / (2 sqrt pi), which for one bell is the same and which does not take two
 * sharp peaks far apart for one broad.
 * @example
 * widthsMm([0, 10, 20, 30, 40], Float64Array.of(-90, 0, 0, 0, -90)).spreadMm.toFixed(3) // => '8.165'
 */
export function widthsMm(stationsMm: ArrayLike<number>, logLikelihood: Float64Array): LikelihoodWidths {
  const top = logLikelihood.reduce((most, value) => Math.max(most, value), Number.NEGATIVE_INFINITY);
  const weights = cellWidths(stationsMm);
  let mass = 0;
  let square = 0;
  let first = 0;
  let second = 0;
  for (let i = 0; i < logLikelihood.length; i++) {
    const value = Math.exp((logLikelihood[i] as number) - top);
    const part = value * (weights[i] as number);
    mass += part;
    square += value * part;
    first += part * (stationsMm[i] as number);
    second += part * (stationsMm[i] as number) ** 2;
  }
  const spreadMm = Math.sqrt(Math.max(0, second / mass - (first / mass) ** 2));
  return { spreadMm, peakMm: mass ** 2 / square / (2 * Math.sqrt(Math.PI)) };
}

/** Millimetres each station stands for. */
function cellWidths(stationsMm: ArrayLike<number>): Float64Array {
  const count = stationsMm.length;
  const widths = new Float64Array(count).fill(1);
  for (let i = 0; count > 1 && i < count; i++) {
    const before = stationsMm[Math.max(0, i - 1)] as number;
    const after = stationsMm[Math.min(count - 1, i + 1)] as number;
    widths[i] = (after - before) / (i > 0 && i < count - 1 ? 2 : 1);
  }
  return widths;
}
