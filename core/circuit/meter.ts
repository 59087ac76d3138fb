/** One function of a meter: how exactly it shows what. Units are the function's own. */
export interface MeterScale {
  /** Accuracy is +-(percent of the figure shown + counts of the last digit). */
  readonly percent: number;
  readonly counts: number;
  /** The last digit on the lowest range. */
  readonly finestStep: number;
  /** Top of the lowest range; each further range is ten times as wide with a step ten times as coarse. */
  readonly lowestTop: number;
  /** The most the function can show; beyond it the meter says open line. */
  readonly highest: number;
}

/** The user's meter. */
export interface Meter {
  readonly name: string;
  readonly ohms: MeterScale & {
    /** Four leads, so that neither the leads nor their contact counts. */
    readonly fourWire: boolean;
    /** What the two leads add, when they were not nulled. */
    readonly leadOhms: number;
    /** Contact of two tips after nulling, one standard deviation; 0.05 ohm when nobody knows it. */
    readonly leadSpreadOhms?: number | undefined;
  };
  readonly volts: MeterScale;
  readonly millivolts: MeterScale;
  /** Picofarad; null when the meter has no such function. */
  readonly capacitance: MeterScale | null;
  /** Below this it beeps; null when nobody knows. */
  readonly beepOhms: number | null;
}

/** Contact of two hand-held tips, after nulling: judgement. */
export const leadSpreadOhms = 0.05;

/**
 * The last digit of a meter at a figure.
 * @example
 * stepAt({ percent: 0.8, counts: 2, finestStep: 0.1, lowestTop: 200, highest: 2e7 }, 1500) // => 1
 */
export function stepAt(scale: MeterScale, figure: number): number {
  let top = scale.lowestTop;
  let step = scale.finestStep;
  while (Math.abs(figure) > top && top < scale.highest) {
    top *= 10;
    step *= 10;
  }
  return step;
}

/**
 * Half-width of the maker's accuracy at a figure: percent of the figure plus counts.
 * @example
 * accuracyLimit({ percent: 0.8, counts: 2, finestStep: 0.1, lowestTop: 200, highest: 2e7 }, 10.1) // => 0.2808
 */
export function accuracyLimit(scale: MeterScale, figure: number): number {
  return (scale.percent / 100) * Math.abs(figure) + scale.counts * stepAt(scale, figure);
}

/**
 * Standard uncertainty of a figure from the accuracy alone: limit over the square root of 3, as for any
 * limit given without a distribution (Fluke Calibration, Basics of Measurement Uncertainty for DMM; GUM).
 * @example
 * accuracySpread({ percent: 0.8, counts: 2, finestStep: 0.1, lowestTop: 200, highest: 2e7 }, 10.1).toFixed(4) // => '0.1621'
 */
export function accuracySpread(scale: MeterScale, figure: number): number {
  return accuracyLimit(scale, figure) / Math.sqrt(3);
}

/**
 * Standard uncertainty of a figure shown: accuracy, the rounding to a step (step / sqrt 12) and, for two
 * leads, their contact.
 * @example
 * shownSpread({ percent: 0.8, counts: 2, finestStep: 0.1, lowestTop: 200, highest: 2e7 }, 10.1, 0.05).toFixed(3) // => '0.172'
 */
export function shownSpread(scale: MeterScale, figure: number, leads = 0): number {
  return Math.hypot(accuracySpread(scale, figure), stepAt(scale, figure) / Math.sqrt(12), leads);
}
