import { logNormalTail } from './normal-tail.ts';

/** Beep threshold when nobody knows the meter's: 35 to 100 ohm is seen in manuals, 50 most often. */
export const usualBeepOhms = 50;

/** Spread of ln(threshold): unknown meter (judgement), and a meter whose threshold is known. */
export const unknownBeepSpread = 0.6;
export const knownBeepSpread = 0.1;

/** A beeper's threshold with its soft edge. */
export interface BeepEdge {
  readonly ohms: number;
  readonly spread: number;
}

/**
 * The soft edge of a meter's beeper.
 * @example
 * beepEdge(null) // => { ohms: 50, spread: 0.6 }
 */
export function beepEdge(knownOhms: number | null): BeepEdge {
  return knownOhms === null
    ? { ohms: usualBeepOhms, spread: unknownBeepSpread }
    : { ohms: knownOhms, spread: knownBeepSpread };
}

/**
 * Chance of a beep at a resistance. A beep does not mean "no resistance".
 * @example
 * beepChance(beepEdge(null), 50) // => 0.5
 */
export function beepChance(edge: BeepEdge, ohms: number): number {
  return Math.exp(logBeepChance(edge, ohms, true));
}

/**
 * Log of the chance of a beep, or of silence, at a resistance; at or below 0 ohm it is as at a microohm.
 * @example
 * logBeepChance(beepEdge(null), 50, false) // => Math.log(0.5)
 */
export function logBeepChance(edge: BeepEdge, ohms: number, beeps: boolean): number {
  const z = (Math.log(Math.max(ohms, 1e-6)) - Math.log(edge.ohms)) / edge.spread;
  return logNormalTail(beeps ? z : -z);
}
