import { afterFinds, type GammaRate, meanRate } from './gamma-rate.ts';

/**
 * Worth of the starting belief that a kind or spot is as dangerous as the model says, in expected finds.
 * Judgement.
 */
export const beliefStrength = 2;

/** What past jobs showed of one kind or spot: finds, and the finds the model expected in the same jobs. */
export interface Experience {
  readonly finds: number;
  /** Sum over jobs of the chance the model gave it before anything was found. */
  readonly expected: number;
}

const asModelled: GammaRate = { a: beliefStrength, b: beliefStrength };

/**
 * Factor on the hazard of a kind from past jobs: (a + n) / (a + E), 1 without any. Valid where only repairs
 * are recorded, the expected finds then adding up to the true ones.
 * @example
 * taughtFactor({ finds: 5, expected: 1.2 }) // => 2.1875
 */
export function taughtFactor({ finds, expected }: Experience): number {
  return meanRate(afterFinds(asModelled, finds, expected));
}

/**
 * Factor of a finer level (one map, one spot) on top of a coarser one's: its own finds against what the model
 * and the coarser factor together expected, shrunk to 1 by the belief's strength.
 * @example
 * finerFactor({ finds: 2, expected: 0.5 }, 2) // => 1.33333
 */
export function finerFactor({ finds, expected }: Experience, coarserFactor: number): number {
  return meanRate(afterFinds(asModelled, finds, expected * coarserFactor));
}
