import { beepChance, beepEdge } from '../circuit/beep.ts';
import type { CircuitState, ProbePlace } from '../circuit/car-state.ts';
import { type CircuitLine, layStraight, lineEnds } from '../circuit/circuit-line.ts';
import { standingWire, typicalSupply } from '../circuit/circuit-network.ts';
import { soundReading } from '../circuit/fault-response.ts';
import type { Meter } from '../circuit/meter.ts';
import { leadNodeIds, meterConnected, type TwoLeadReading } from '../circuit/metered-circuit.ts';
import { otherCircuitId } from '../circuit/reading-likelihood.ts';
import { mostInjectionVolts } from '../circuit/safe-injection.ts';
import { layLadder } from '../circuit/wire-ladder.ts';
import type { CircuitEndKind } from '../map/kinds.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { EntryOf } from './job-document.ts';
import type { Reading } from './reading.ts';
import { type SoundCapacitance, soundCapacitance } from './sound-capacitance.ts';

/** What a test shows when the circuit is sound again. */
export type SoundExpectation =
  | {
      readonly what: 'figure';
      readonly value: number;
      readonly unit: 'ohm' | 'volt';
      /** An end part that was plugged in decides it, and only its usual size is known. */
      readonly rough: boolean;
    }
  | { readonly what: 'open-line' }
  | {
      /** A buzzer near its own limit may do either. */
      readonly what: 'beeps' | 'silent' | 'may-beep';
      readonly ohms: number | 'open-line';
      readonly rough: boolean;
    }
  | {
      /** What was driven into the fault has nowhere to go but through what is still plugged in. */
      readonly what: 'current';
      readonly amps: number;
      readonly rough: boolean;
    }
  | SoundCapacitance
  | { readonly what: 'symptom-gone' | 'no-change' | 'works' }
  /** The circuit does not allow a figure. */
  | { readonly what: 'as-sound' };

/** Above this a hand meter shows an open line or the parts round the wire, not the wire. Judgement. */
export const openLineOhms = 1e6;

/** A buzzer does what its limit says with at least this chance, or nobody should rely on it. Judgement. */
const sureBeep = 0.9;

/** Ends whose size the map knows well enough: a switch's position is entered, an earth and a feed are near nothing. */
const plainEnds: ReadonlySet<CircuitEndKind> = new Set(['ground-point', 'switch-to-ground', 'fused-supply']);

/** What else is known of a test beside the circuit. */
export interface AskedWith {
  readonly meter?: Pick<Meter, 'beepOhms'> | null;
  /** Readings from before the repair. */
  readonly before?: readonly EntryOf<'reading'>[];
}

/**
 * What a test will show on the sound circuit, with the car as it stood. Ohms, beeps, volts and the current a
 * drop test can still drive come from the solved circuit with nothing wrong, capacitance from the wire that
 * hangs together and what was measured before; where the circuit cannot be solved only `as-sound` is said.
 * @example
 * soundExpectation(sample.map, sample.line, { test: 'ohms', from: { on: 'wire', nodeId: 'node:west' }, to: { on: 'body' }, ohms: 0.4 }, { apartNodeIds: ['node:west', 'node:far'], switchClosed: null, ignitionOn: false, batteryConnected: false }) // => { what: 'open-line' }
 */
export function soundExpectation(
  map: MapDocument,
  line: CircuitLine,
  reading: Reading,
  state: CircuitState,
  { meter = null, before = [] }: AskedWith = {},
): SoundExpectation {
  switch (reading.test) {
    case 'symptom':
      return { what: 'symptom-gone' };
    case 'move':
      return { what: 'no-change' };
    case 'function':
      return { what: 'works' };
    case 'capacitance':
      return soundCapacitance(line, reading, state, before) ?? { what: 'as-sound' };
    case 'drop':
      return drivenCurrent(map, line, reading.driven, state);
    case 'volts': {
      const value = shownSound(map, line, reading, state);
      if (value === null) return { what: 'as-sound' };
      return { what: 'figure', value, unit: 'volt', rough: isRough(line, state) };
    }
    case 'ohms': {
      const value = shownSound(map, line, reading, state);
      if (value === null) return { what: 'as-sound' };
      if (value >= openLineOhms) return { what: 'open-line' };
      return { what: 'figure', value, unit: 'ohm', rough: isRough(line, state) };
    }
    case 'beep': {
      const value = shownSound(map, line, reading, state);
      if (value === null) return { what: 'as-sound' };
      const chance = beepChance(beepEdge(meter?.beepOhms ?? null), value);
      const what = chance >= sureBeep ? 'beeps' : chance <= 1 - sureBeep ? 'silent' : 'may-beep';
      return { what, ohms: value >= openLineOhms ? 'open-line' : value, rough: isRough(line, state) };
    }
  }
}

/**
 * Where the fault was, current now only flows through what is still plugged in: 12 V by what the driven end has
 * to the body without a supply of its own.
 */
function drivenCurrent(
  map: MapDocument,
  line: CircuitLine,
  driven: ProbePlace,
  state: CircuitState,
): SoundExpectation {
  if (driven.on !== 'wire') return { what: 'as-sound' };
  // A lamp or limiter stands in the place of the fuse, and the supply behind it is what drives.
  const fuse = line.circuit.ends.find(({ kind }) => kind === 'fused-supply')?.nodeId;
  const apartNodeIds = fuse ? [...state.apartNodeIds, fuse] : state.apartNodeIds;
  const still = { ...state, apartNodeIds, batteryConnected: false, ignitionOn: false };
  const ohms = shownSound(
    map,
    line,
    { test: 'ohms', from: driven, to: { on: 'body' }, ohms: 'open-line' },
    still,
  );
  if (ohms === null) return { what: 'as-sound' };
  if (ohms >= openLineOhms) return { what: 'current', amps: 0, rough: false };
  return { what: 'current', amps: mostInjectionVolts / ohms, rough: isRough(line, still) };
}

/** Ohm or volt between the leads on the sound circuit; null where a lead sits on neither wire. */
function shownSound(
  map: MapDocument,
  line: CircuitLine,
  reading: TwoLeadReading,
  state: CircuitState,
): number | null {
  const { circuit } = line;
  const leads = leadNodeIds([reading]);
  const otherId = otherCircuitId(line, [{ reading, state }]);
  const otherCircuit = otherId ? map.circuits.get(otherId) : undefined;
  const laid = otherCircuit ? layStraight(map, otherCircuit) : null;
  const other =
    otherCircuit && laid?.ok
      ? {
          circuitId: otherCircuit.id,
          wire: standingWire(layLadder(map, laid.value, leads), otherCircuit),
        }
      : null;
  const main = standingWire(layLadder(map, line, leads), circuit);
  const metered = meterConnected({ mainId: circuit.id, main, other }, reading, state, typicalSupply);
  return metered ? soundReading(metered) : null;
}

function isRough(line: CircuitLine, state: CircuitState): boolean {
  return lineEnds(line).some(
    ({ nodeId, kind }) =>
      kind !== 'other' &&
      (nodeId === null || !state.apartNodeIds.includes(nodeId)) &&
      (!plainEnds.has(kind) || (kind === 'switch-to-ground' && state.switchClosed === null)),
  );
}
