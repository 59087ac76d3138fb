import type { StandingWire, SupplyFigures } from './circuit-network.ts';
import { type FaultResponse, soundReading } from './fault-response.ts';
import { type MeteredCircuit, meterConnected, type ReadingWires } from './metered-circuit.ts';
import { injectorScore, logScore, type ShownScore, shownScore } from './shown-score.ts';
import type { UsableReading } from './usable-readings.ts';

/** The wires and the supply in one possible state. */
export interface SharedSetting {
  readonly wires: ReadingWires;
  readonly supply: SupplyFigures;
}

/** One reading connected in one setting. */
export interface JoinedReading {
  readonly from: UsableReading;
  readonly metered: MeteredCircuit;
  /** The same with the current drawn out of the wire; only for drop tests on a car with its battery on. */
  readonly drawn: MeteredCircuit | null;
  readonly score: ShownScore;
  /** Added to what the circuit gives: leads that were not nulled. */
  readonly leadOhms: number;
}

/** All readings connected in one setting. */
export interface JoinedReadings {
  readonly setting: SharedSetting;
  readonly readings: readonly JoinedReading[];
}

/** Volts are compared no finer than this share of themselves: the supply is known by draws only. */
const voltsGrain = 0.005;

/**
 * Connects every reading's meter in one setting. `grainOhms` widens figures by what the draws of shared
 * errors cannot resolve, `sharedShare` by that share of the wire ohms in them where there are no draws.
 * @example
 * connectAll({ wires: { mainId: sample.circuit.id, main: standingWire(layLadder(sample.map, sample.line, []), sample.circuit), other: null }, supply: typicalSupply }, [], 0).readings // => []
 */
export function connectAll(
  setting: SharedSetting,
  usable: readonly UsableReading[],
  grainOhms: number,
  sharedShare = 0,
): JoinedReadings {
  const loopOhms =
    wireOhms(setting.wires.main) + (setting.wires.other ? wireOhms(setting.wires.other.wire) : 0);
  const readings = usable.flatMap((from): JoinedReading[] => {
    const { reading, state, meter, clip } = from;
    const metered = meterConnected(setting.wires, reading, state, setting.supply);
    if (!metered) return [];
    const isDrawn = reading.test === 'drop' && state.batteryConnected;
    return [
      {
        from,
        metered,
        drawn: isDrawn ? meterConnected(setting.wires, reading, state, setting.supply, -1) : null,
        score: shownScore(reading, meter, grainOf(reading, grainOhms, sharedShare, loopOhms), clip),
        leadOhms: reading.test === 'ohms' && !meter.ohms.fourWire ? meter.ohms.leadOhms : 0,
      },
    ];
  });
  return { setting, readings };
}

/** Ohms of a wire from end to end. */
function wireOhms(wire: StandingWire): number {
  return wire.linkOhms.reduce((sum, ohms) => sum + ohms, 0);
}

function grainOf(
  reading: UsableReading['reading'],
  grainOhms: number,
  sharedShare: number,
  loopOhms: number,
): number {
  if (grainOhms === 0) return 0;
  if (reading.test === 'volts') return Math.max(voltsGrain, sharedShare) * Math.abs(reading.volts);
  const seenOhms =
    reading.test === 'drop'
      ? Math.abs(reading.millivolts) / 1000 / reading.currentA
      : reading.test === 'ohms' && typeof reading.ohms === 'number'
        ? reading.ohms
        : loopOhms;
  const ohms = Math.hypot(grainOhms, sharedShare * Math.min(seenOhms, loopOhms));
  return reading.test === 'drop' ? 1000 * reading.currentA * ohms : ohms;
}

/**
 * Score of all readings when nothing is wrong with the wire or its ends.
 * @example
 * soundScore({ readings: [] }) // => 0
 */
export function soundScore({ readings }: Pick<JoinedReadings, 'readings'>): number {
  let sum = 0;
  for (const { metered, score, leadOhms, from } of readings) {
    sum += logScore(score, soundReading(metered) + leadOhms);
    if (from.reading.test === 'drop') sum += logScore(injectorScore, soundReading(pushed(metered)));
  }
  return sum;
}

/**
 * The same solved circuit, asked for the volts the injecting supply needed.
 * @example
 * pushed({ plus: 1, minus: 2, unitsPerVolt: 1000, size: 1, inverse: Float64Array.of(4), transfer: Float64Array.of(3) }).transfer // => Float64Array.of(4)
 */
export function pushed<M extends Omit<MeteredCircuit, 'network' | 'solution'>>(metered: M): M {
  const { plus, size, inverse } = metered;
  const transfer = plus === 0 ? new Float64Array(size) : inverse.subarray((plus - 1) * size, plus * size);
  return { ...metered, minus: 0, unitsPerVolt: 1, transfer };
}

/**
 * A response with something added to every reading.
 * @example
 * raised({ sound: 1, numerator: new Float64Array(0), offset: new Float64Array(0) }, 2).sound // => 3
 */
export function raised(response: FaultResponse, by: number): FaultResponse {
  return by === 0 ? response : { ...response, sound: response.sound + by };
}
