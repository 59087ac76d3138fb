import { normalTail } from '../quantity/normal-tail.ts';

/** Knots to one sigma; between two of them a cubic is out by under 1e-6 of the tail. */
const knotsInSigma = 64;
const farthestSigmas = 8;
const knots = farthestSigmas * knotsInSigma;

const bell = (z: number) => Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);

/** The tail falls as fast as the bell is high; the sum of all tails beyond falls as fast as the tail is high. */
const tails = cubicsOf(normalTail, bell);
const sums = cubicsOf(exactSum, normalTail);

function exactSum(z: number): number {
  if (z < 4) return bell(z) - z * normalTail(z);
  // Far out the two cancel; the asymptotic continued fraction does not (Abramowitz and Stegun 26.2.14, from memory).
  let below = z + 30 / z;
  for (let k = 29; k >= 2; k--) below = z + k / below;
  return bell(z) / (z * below + 1);
}

/** Between each two knots of a falling figure the cubic through both with the slope of both, lowest power first. */
function cubicsOf(figure: (z: number) => number, fall: (z: number) => number): Float64Array {
  const cubics = new Float64Array(4 * knots);
  for (let i = 0; i < knots; i++) {
    const [from, to] = [i / knotsInSigma, (i + 1) / knotsInSigma];
    const slopeFrom = -fall(from) / knotsInSigma;
    const slopeTo = -fall(to) / knotsInSigma;
    const rise = figure(to) - figure(from);
    const bend = slopeFrom + slopeTo - 2 * rise;
    cubics.set([figure(from), slopeFrom, rise - slopeFrom - bend, bend], 4 * i);
  }
  return cubics;
}

function readOff(cubics: Float64Array, x: number): number {
  const at = x * knotsInSigma;
  const knot = at | 0;
  const t = at - knot;
  const i = 4 * knot;
  return (
    (cubics[i] as number) +
    t * ((cubics[i + 1] as number) + t * ((cubics[i + 2] as number) + t * (cubics[i + 3] as number)))
  );
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
  const tail = readOff(tails, x);
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
  const sum = readOff(sums, x);
  return z < 0 ? x + sum : sum;
}
