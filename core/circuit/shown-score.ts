import { type BeepEdge, beepEdge, logBeepChance } from './beep.ts';
import type { ElectricalReading, Shown } from './car-state.ts';
import { leadSpreadOhms, type Meter, type MeterScale, shownSpread } from './meter.ts';
import { meterInputOhms } from './metered-circuit.ts';
import { logNormalTail } from './normal-tail.ts';

/** A reading never counts for more than this against a hypothesis, in nats: a wrong pin, a bad tip (5.7 u). */
export const outlierNats = 16;

/** How well a predicted figure agrees with what a meter showed. */
export type ShownScore =
  /** A figure with its standard uncertainty. */
  | { readonly kind: 'figure'; readonly value: number; readonly spread: number; readonly clip: number }
  /** Beyond the top of the range: the true figure lies above the limit. */
  | { readonly kind: 'above'; readonly value: number; readonly spread: number; readonly clip: number }
  /** The true figure cannot lie above the limit: what drove it could not. */
  | { readonly kind: 'below'; readonly value: number; readonly spread: number; readonly clip: number }
  | { readonly kind: 'beep'; readonly edge: BeepEdge; readonly beeps: boolean; readonly clip: number };

/**
 * Log-likelihood of what was shown, given the figure predicted, without the constant that is the same
 * for all hypotheses; at least -16.
 * @example
 * logScore({ kind: 'figure', value: 10, spread: 0.5, clip: 16 }, 11) // => -2
 */
export function logScore(score: ShownScore, predicted: number): number {
  switch (score.kind) {
    case 'figure':
      return Math.max(-score.clip, -0.5 * ((predicted - score.value) / score.spread) ** 2);
    case 'above':
      return limitScore((score.value - predicted) / score.spread, score.clip);
    case 'below':
      return limitScore((predicted - score.value) / score.spread, score.clip);
    case 'beep':
      return Math.max(-score.clip, logBeepChance(score.edge, predicted, score.beeps));
  }
}

/** Log tail at z; far on either side its value is known without working it out. */
function limitScore(z: number, clip: number): number {
  if (z < -6) return 0;
  return z > 6 ? -Math.min(clip, outlierNats) : Math.max(-clip, logNormalTail(z));
}

/** The most an injecting supply is set to push, in volts, and how softly that limit holds. */
export const injectorVolts = 13;
const injectorSpread = 0.7;

/**
 * The limit on an injecting supply: had the way to the fault needed more volts, the stated current would
 * not have flowed.
 * @example
 * injectorScore.value // => 13
 */
export const injectorScore: ShownScore = {
  kind: 'below',
  value: injectorVolts,
  spread: injectorSpread,
  clip: outlierNats,
};

/**
 * The score of a two-lead reading by a meter. Ohms are compared as the circuit shows them beside the
 * meter's own 10 megohm. `extraSpread` is in displayed units; `clip` below 16 is for readings that
 * cannot be trusted far.
 * @example
 * shownScore({ test: 'volts', from: { on: 'battery-positive' }, to: { on: 'body' }, volts: 12 }, handMeter).value // => 12
 */
export function shownScore(
  reading: Exclude<ElectricalReading, { readonly test: 'capacitance' }>,
  meter: Meter,
  extraSpread = 0,
  clip = outlierNats,
): ShownScore {
  switch (reading.test) {
    case 'ohms':
      return ohmsScore(reading.ohms, meter, extraSpread, clip);
    case 'beep':
      return { kind: 'beep', edge: beepEdge(meter.beepOhms), beeps: reading.beeps, clip };
    case 'volts':
      return figure(reading.volts, meter.volts, extraSpread, clip);
    case 'drop':
      return figure(Math.abs(reading.millivolts), meter.millivolts, extraSpread, clip);
  }
}

function figure(value: number, scale: MeterScale, extraSpread: number, clip: number): ShownScore {
  return { kind: 'figure', value, spread: Math.hypot(shownSpread(scale, value), extraSpread), clip };
}

function ohmsScore(shown: Shown, meter: Meter, extraSpread: number, clip: number): ShownScore {
  const beside = (ohms: number): number => (ohms * meterInputOhms) / (ohms + meterInputOhms);
  const slope = (ohms: number): number => (meterInputOhms / (ohms + meterInputOhms)) ** 2;
  const leads = meter.ohms.fourWire ? 0 : (meter.ohms.leadSpreadOhms ?? leadSpreadOhms);
  if (typeof shown !== 'number') {
    const top = meter.ohms.highest;
    return { kind: 'above', value: beside(top), spread: 0.05 * top * slope(top), clip };
  }
  const spread = Math.hypot(shownSpread(meter.ohms, shown, leads), extraSpread);
  return { kind: 'figure', value: beside(shown), spread: spread * slope(shown), clip };
}
