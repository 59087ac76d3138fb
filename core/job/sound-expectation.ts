import type { CircuitState, ElectricalReading } from '../circuit/car-state.ts';
import type { CircuitLine } from '../circuit/circuit-line.ts';
import { standingWire, typicalSupply } from '../circuit/circuit-network.ts';
import { soundReading } from '../circuit/fault-response.ts';
import { accuracyLimit, type Meter } from '../circuit/meter.ts';
import { leadNodeIds, meterConnected } from '../circuit/metered-circuit.ts';
import { layLadder } from '../circuit/wire-ladder.ts';
import type { CircuitEndKind } from '../map/kinds.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { Reading } from './reading.ts';

/** What a test shows when the circuit is sound again. */
export type SoundExpectation =
  | {
      readonly what: 'figure';
      readonly value: number;
      readonly unit: 'ohm' | 'volt';
      /** An end part that was plugged in decides it, and only its usual size is known. */
      readonly rough: boolean;
    }
  | { readonly what: 'open-line' | 'beeps' | 'silent' }
  /** What was driven into the fault has nowhere to go any more. */
  | { readonly what: 'no-current' }
  | { readonly what: 'symptom-gone' | 'no-change' | 'works' }
  /** The circuit does not allow a figure. */
  | { readonly what: 'as-sound' };

/** Above this a hand meter shows an open line or the parts round the wire, not the wire. Judgement. */
const openLineOhms = 1e6;

/** A buzzer's usual limit, where the meter's own is not known. Common practice, no source. */
const usualBeepOhms = 50;

/** Ends whose size the map knows well enough: a switch's position is entered, an earth and a feed are near nothing. */
const plainEnds: ReadonlySet<CircuitEndKind> = new Set(['ground-point', 'switch-to-ground', 'fused-supply']);

/**
 * What a test will show on the sound circuit, with the car as it stood. Ohms and volts come from the solved
 * circuit with nothing wrong; where it cannot be solved, or the test has no figure, only `as-sound` is said.
 * @example
 * soundExpectation(sample.map, sample.line, { test: 'ohms', from: { on: 'wire', nodeId: 'node:west' }, to: { on: 'body' }, ohms: 0.4 }, { apartNodeIds: ['node:west', 'node:far'], switchClosed: null, ignitionOn: false, batteryConnected: false }) // => { what: 'open-line' }
 */
export function soundExpectation(
  map: MapDocument,
  line: CircuitLine,
  reading: Reading,
  state: CircuitState,
): SoundExpectation {
  switch (reading.test) {
    case 'symptom':
      return { what: 'symptom-gone' };
    case 'move':
      return { what: 'no-change' };
    case 'function':
      return { what: 'works' };
    case 'drop':
      return { what: 'no-current' };
    case 'capacitance':
      return { what: 'as-sound' };
    default:
      return electricalExpectation(map, line, reading, state);
  }
}

function electricalExpectation(
  map: MapDocument,
  line: CircuitLine,
  reading: Extract<ElectricalReading, { test: 'ohms' | 'beep' | 'volts' }>,
  state: CircuitState,
): SoundExpectation {
  const { circuit } = line;
  const ladder = layLadder(map, line, leadNodeIds([reading]));
  const wires = { mainId: circuit.id, main: standingWire(ladder, circuit), other: null };
  const metered = meterConnected(wires, reading, state, typicalSupply);
  if (!metered) return { what: 'as-sound' };
  const value = soundReading(metered);
  const pluggedIn = circuit.ends.filter(
    ({ nodeId, kind }) => kind !== 'other' && (nodeId === null || !state.apartNodeIds.includes(nodeId)),
  );
  const rough = pluggedIn.some(
    ({ kind }) => !plainEnds.has(kind) || (kind === 'switch-to-ground' && state.switchClosed === null),
  );
  if (reading.test === 'volts') return { what: 'figure', value, unit: 'volt', rough };
  if (reading.test === 'beep') return { what: value < usualBeepOhms ? 'beeps' : 'silent' };
  return value >= openLineOhms ? { what: 'open-line' } : { what: 'figure', value, unit: 'ohm', rough };
}

/** Contact of two hand-held tips and the spread of wire ohms about the table's. Judgement. */
const tipOhms = 0.2;
const wireShare = 0.15;

/**
 * Whether what a test showed is what a sound circuit shows. Null where that cannot be told from the figures:
 * an expectation that rests on the usual size of a part, or a test without an expected value.
 * @example
 * looksSound({ what: 'open-line' }, { test: 'ohms', from: { on: 'body' }, to: { on: 'body' }, ohms: 0.4 }, null) // => false
 */
export function looksSound(
  expected: SoundExpectation,
  reading: Reading,
  meter: Pick<Meter, 'ohms' | 'volts'> | null,
): boolean | null {
  switch (reading.test) {
    case 'symptom':
      return !reading.stays;
    case 'move':
      return reading.changed === 0;
    case 'function':
      return reading.works;
    case 'drop':
      return false;
    case 'capacitance':
      return null;
    case 'beep':
      if (expected.what === 'beeps') return reading.beeps;
      return expected.what === 'silent' ? !reading.beeps : null;
    case 'ohms': {
      const isOpen = typeof reading.ohms !== 'number' || reading.ohms >= openLineOhms;
      if (expected.what === 'open-line') return isOpen;
      if (expected.what !== 'figure' || expected.rough) return null;
      if (typeof reading.ohms !== 'number') return false;
      const limit = meter ? accuracyLimit(meter.ohms, reading.ohms) : 0;
      return Math.abs(reading.ohms - expected.value) <= limit + tipOhms + wireShare * expected.value;
    }
    case 'volts': {
      if (expected.what !== 'figure' || expected.rough) return null;
      const limit = meter ? accuracyLimit(meter.volts, reading.volts) : 0;
      // The battery stands between 12 and 13 V at rest. Common practice, no source.
      return Math.abs(reading.volts - expected.value) <= limit + 0.6;
    }
  }
}
