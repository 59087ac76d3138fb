import type { NodeKind } from '../map/kinds.ts';

/**
 * Rates and factors that set one mechanism against another. All are common practice, no source, chosen on
 * one scale: a raw edge 6 mm from a bare loom in a 300 mm span makes about 0.007 per hour of driving.
 */
export const baseRates = {
  /** Light-load rubbing in a car against the scrape needle's regime: common practice, no source. */
  vibration: 1e-3,
  /** Common practice, no source. */
  foot: 0.1,
  /** Common practice, no source. */
  slide: 0.3,
  /** Flex cracks start at stiff places strain formulas do not see: common practice, no source. */
  flex: 300,
  /** Per hour at a bend of twice the advised tightness over one bare thin wall: common practice, no source. */
  tightBend: 0.001,
  /** Per hour and mm of wet loom: common practice, no source. */
  wetPerMm: 2e-6,
  /** A joint in a wet run over a dry one: common practice, no source. */
  wetJointFactor: 4,
} as const;

/**
 * Rate per hour of the metal in one joint on the way failing: common practice, no source. A plug, and whatever
 * sits at either end of a circuit, is a part that `core/locate` weighs on its own account; were it here as
 * well, it would count twice.
 */
export const jointRate: Readonly<Partial<Record<NodeKind, number>>> = {
  splice: 0.0007, // common practice, no source
  'ground-point': 0.0015, // common practice, no source
};
