/** What is known of a rate: a gamma distribution with shape a and exposure b. Mean a / b. */
export interface GammaRate {
  readonly a: number;
  readonly b: number;
}

/**
 * A rate after so many finds in so much exposure: Gamma(a + n, b + t), the conjugate update of a Poisson
 * count. Jobs that found nothing count as exposure. Taking an entry back is an update with minus its counts.
 * @example
 * afterFinds({ a: 0.5, b: 20 }, 3, 17) // => { a: 3.5, b: 37 }
 */
export function afterFinds(rate: GammaRate, finds: number, exposure: number): GammaRate {
  return { a: rate.a + finds, b: rate.b + exposure };
}

/**
 * Mean of a rate.
 * @example
 * meanRate({ a: 3.5, b: 37 }) // => 0.0945946
 */
export function meanRate({ a, b }: GammaRate): number {
  return a / b;
}

/**
 * Standard deviation of a rate.
 * @example
 * rateDeviation({ a: 4, b: 8 }) // => 0.25
 */
export function rateDeviation({ a, b }: GammaRate): number {
  return Math.sqrt(a) / b;
}

/**
 * The prior of a finer level drawn towards a coarser one: the coarser level's mean, worth `strength` exposures
 * of the finer one. With few finds of its own a spot keeps its kind's rate; with many it goes its own way.
 * @example
 * afterFinds(drawnTowards({ a: 3, b: 60 }, 20), 0, 0) // => { a: 1, b: 20 }
 */
export function drawnTowards(coarser: GammaRate, strength: number): GammaRate {
  return { a: meanRate(coarser) * strength, b: strength };
}
