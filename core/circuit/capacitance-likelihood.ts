import type { Meter } from './meter.ts';
import { shownSpread } from './meter.ts';
import { outlierNats } from './shown-score.ts';

/** A capacitance reading on a wire that hangs free. */
export interface CapacitanceReading {
  /** Length of wire the lead sees, branches too, with the wire broken at a station or (null) whole. */
  readonly seenMm: (openMm: number | null) => number;
  readonly picofarads: number;
  readonly meter: Meter;
}

/** Wire in a loom against everything around it: 20 to 100 pF/m, from memory; the level is shared by all readings. */
export const usualPicofaradsPerMetre = 45;
const levelSpread = 0.45;

/** How much two parts of one run differ in pF/m, one standard deviation (judgement). */
const unevenness = 0.08;

/** Stray of two leads left after nulling, in pF, one standard deviation (judgement). */
export const strayPicofarads = 3;

/** A wire that touches something seldom gives a steady figure at all (judgement). */
export const shortedCapacitanceNats = -2;

const levelNodes = 81;

/**
 * Log-likelihood of capacitance readings for an open at each station: each reading sees the wire from
 * its lead to the open. The level per metre is integrated out, so two readings from the two ends locate
 * by their ratio. A station of null is the unbroken wire. O(stations x readings).
 * @example
 * capacitanceLogLikelihood([], [500]) // => Float64Array.of(0)
 */
export function capacitanceLogLikelihood(
  readings: readonly CapacitanceReading[],
  openStationsMm: ArrayLike<number | null>,
): Float64Array {
  const answer = new Float64Array(openStationsMm.length);
  if (readings.length === 0) return answer;
  const levels = Array.from({ length: levelNodes }, (_, k) => {
    const z = (k / (levelNodes - 1) - 0.5) * 8;
    const weight = Math.exp((-z * z) / 2) * (8 / (levelNodes - 1)) * 0.3989422804014327;
    return { perMetre: usualPicofaradsPerMetre * Math.exp(levelSpread * z), weight };
  });
  const accuracy = readings.map(({ meter, picofarads }) =>
    meter.capacitance ? shownSpread(meter.capacitance, picofarads) : 10 + 0.1 * picofarads,
  );
  for (let i = 0; i < openStationsMm.length; i++) {
    const openMm = openStationsMm[i] ?? null;
    const metres = readings.map((reading) => reading.seenMm(openMm) / 1000);
    let sum = 0;
    for (const { perMetre, weight } of levels) {
      let score = 0;
      for (let k = 0; k < readings.length; k++) {
        const expected = perMetre * (metres[k] as number);
        const spread = Math.hypot(accuracy[k] as number, strayPicofarads, unevenness * expected);
        const z = ((readings[k] as CapacitanceReading).picofarads - expected) / spread;
        // The spread differs between stations, so its logarithm counts.
        score -= Math.min(outlierNats, 0.5 * z * z) + Math.log(spread / (accuracy[k] as number));
      }
      sum += weight * Math.exp(score);
    }
    answer[i] = Math.log(Math.max(sum, 1e-300));
  }
  return answer;
}
