import type { Chance } from '../quantity/chance.ts';
import { type ChafeAssumptions, defaultAssumptions } from './chafe-assumptions.ts';

/** Spread of a constant: a factor either way that two draws in three stay within, or a range drawn evenly. */
export type Spread =
  | { readonly within: number; readonly most?: number }
  | { readonly from: number; readonly to: number };

/**
 * How far each constant of judgement may be off. Every spread is judgement, no source; those of wear are
 * bounded by published wear coefficients, which span two decades in a class (NPTEL course 112104122, 7.5).
 */
export const uncertainConstants = {
  /** Each base rate on its own: one mechanism against another. */
  baseRate: { within: 2.5 }, // judgement
  /** Each kind of edge on its own. */
  edgeSeverity: { within: 2 }, // judgement
  /** Painted body, own clips, holes, what lies underfoot: each on its own. */
  surfaceSeverity: { within: 2 }, // judgement
  /** Doubt of clearances, given and from plan alike. */
  clearanceSigma: { within: 1.4 }, // judgement
  /** Share of the mid-span motion left at a clip. */
  motionAtClip: { from: 0.15, to: 0.45 }, // judgement
  /** Share of places where a cover is not there, each cover on its own. */
  bypass: { within: 1.7, most: 0.5 }, // judgement
  /** How hard the car is driven against the test profile. */
  serviceLevel: { within: 1.5, most: 1 }, // judgement
  /** Resonance of a taped loom. */
  quality: { from: 3, to: 12 }, // common practice, no source
} as const satisfies Readonly<Record<string, Spread>>;

/**
 * One value of a constant: log-normal about it, or evenly from a range.
 * @example
 * drawnConstant(2, { from: 1, to: 3 }, () => 0.25) // => 1.5
 */
export function drawnConstant(usual: number, spread: Spread, chance: Chance): number {
  if ('from' in spread) return spread.from + (spread.to - spread.from) * chance();
  const drawn = usual * spread.within ** normalDraw(chance);
  return spread.most === undefined ? drawn : Math.min(spread.most, drawn);
}

/** A standard normal (Box and Muller 1958, from memory). */
const normalDraw = (chance: Chance) =>
  Math.sqrt(-2 * Math.log(1 - chance())) * Math.cos(2 * Math.PI * chance());

/**
 * The model with every uncertain constant drawn anew. The same chance gives the same draw.
 * @example
 * drawnAssumptions(() => 0.5).motionAtClip // => 0.3
 */
export function drawnAssumptions(
  chance: Chance,
  usual: ChafeAssumptions = defaultAssumptions,
): ChafeAssumptions {
  const spreads = uncertainConstants;
  const each = <K extends string>(row: Readonly<Record<K, number>>, spread: Spread) =>
    Object.fromEntries(
      Object.entries<number>(row).map(([key, value]) => [key, drawnConstant(value, spread, chance)]),
    ) as Record<K, number>;
  const doubt = drawnConstant(1, spreads.clearanceSigma, chance);
  const { grommetFactor, ...surfaces } = usual.surfaceSeverity;
  const protection = Object.fromEntries(
    Object.entries(usual.protection).map(([covering, { strokes, bypass }]) => [
      covering,
      { strokes, bypass: drawnConstant(bypass, spreads.bypass, chance) },
    ]),
  ) as unknown as ChafeAssumptions['protection'];
  return {
    ...usual,
    baseRates: each(usual.baseRates, spreads.baseRate),
    edgeSeverity: each(usual.edgeSeverity, spreads.edgeSeverity),
    surfaceSeverity: { ...each(surfaces, spreads.surfaceSeverity), grommetFactor },
    clearanceSigmaMm: usual.clearanceSigmaMm * doubt,
    planClearanceSigmaMm: usual.planClearanceSigmaMm * doubt,
    motionAtClip: drawnConstant(usual.motionAtClip, spreads.motionAtClip, chance),
    protection,
    ride: {
      ...usual.ride,
      serviceLevel: drawnConstant(usual.ride.serviceLevel, spreads.serviceLevel, chance),
      quality: drawnConstant(usual.ride.quality, spreads.quality, chance),
    },
  };
}
