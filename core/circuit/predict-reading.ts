import type { FaultClass } from '../map/kinds.ts';
import { faultResponse, isSeriesClass } from './fault-response.ts';
import type { MeteredCircuit } from './metered-circuit.ts';
import type { LadderPlaces } from './wire-ladder.ts';

/**
 * What the meter would show (ohm, volt or millivolt, beside its own 10 megohm) with a fault of one class
 * and resistance at each place. O(places), no further solve.
 * @example
 * predictReading(meterConnected({ mainId: sample.circuit.id, main: standingWire(layLadder(sample.map, sample.line, ['node:west']), sample.circuit), other: null }, { test: 'ohms', from: { on: 'wire', nodeId: 'node:west' }, to: { on: 'body' }, ohms: 0 }, withEndsApart(bareState, sample.circuit.ends), typicalSupply), 'short-to-ground', placesOnLadder(layLadder(sample.map, sample.line, []), [250, 1000]), 0.5) // => Float64Array.of(0.5136, 0.5594)
 */
export function predictReading(
  metered: MeteredCircuit,
  faultClass: FaultClass,
  places: LadderPlaces,
  faultOhms: number,
  otherPlaces: LadderPlaces | null = null,
): Float64Array {
  const { sound, numerator, offset } = faultResponse(metered, faultClass, places, otherPlaces);
  const theta = isSeriesClass(faultClass) ? 1 / faultOhms : faultOhms;
  return numerator.map((bend, i) => sound - bend / (theta + (offset[i] as number)));
}
