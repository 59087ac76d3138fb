import { normalTail } from '../quantity/normal-tail.ts';

/** Knots to one sigma; between two of them a cubic is out by under 1e-6 of the tail. */
const knotsInSigma = 64;
const farthestSigmas = 8;
const knots = farthestSigmas * knotsInSigma + 1;

/** At each knot: the tail beyond it, the bell (how fast the tail falls), and the sum of all tails beyond it. */
const tails = new Float64Array(knots + 1);
const bells = new Float64Array(knots + 1);
const sums = new Float64Array(knots + 1);
for (let i = 0; i <= knots; i++) {
  const z = i / knotsInSigma;
  tails[i] = normalTail(z);
  bells[i] = Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);
  sums[i] = exactSum(z);
}

function exactSum(z: number): number {
  const bell = Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);
  if (z < 4) return bell - z * normalTail(z);
  // Far out the two cancel; the asymptotic continued fraction does not (Abramowitz and Stegun 26.2.14, from memory).
  let below = z + 30 / z;
  for (let k = 29; k >= 2; k--) below = z + k / below;
  return bell / (z * below + 1);
}

/** Cubic Hermite in a falling table, x sigmas from its start; `falls` is how fast it falls a sigma at each knot. */
function readOff(table: Float64Array, falls: Float64Array, x: number): number {
  const at = x * knotsInSigma;
  const i = at | 0;
  const t = at - i;
  const here = table[i] as number;
  const slopeHere = -(falls[i] as number) / knotsInSigma;
  const slopeNext = -(falls[i + 1] as number) / knotsInSigma;
  const rise = (table[i + 1] as number) - here;
  const bend = slopeHere + slopeNext - 2 * rise;
  return here + t * (slopeHere + t * (rise - slopeHere - bend + t * bend));
}

/**
 * `normalTail` read from a table, never rising; nothing beyond eight sigmas. For the places of a run, of which there are
 * hundreds of thousands in a map.
 * @example
 * quickTail(1.5) // => 0.0668072
 */
export function quickTail(z: number): number {
  const x = z < 0 ? -z : z;
  if (x >= farthestSigmas) return z < 0 ? 1 : 0;
  const tail = readOff(tails, bells, x);
  return z < 0 ? 1 - tail : tail;
}

/**
 * All normal tails beyond z added up: the integral of `normalTail` from z to infinity, bell(z) - z tail(z), from
 * the same kind of table. The mean tail between two places is the fall of this over the way between them.
 * @example
 * tailsBeyond(0) // => 0.398942
 */
export function tailsBeyond(z: number): number {
  const x = z < 0 ? -z : z;
  if (x >= farthestSigmas) return z < 0 ? x : 0;
  const sum = readOff(sums, tails, x);
  return z < 0 ? x + sum : sum;
}
