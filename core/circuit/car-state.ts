import type { CircuitId, NodeId } from '../quantity/id.ts';

/** How the car stood while a reading was taken. */
export interface CircuitState {
  /** Inline plugs apart and components unplugged (a fused supply: the fuse is out). */
  readonly apartNodeIds: readonly NodeId[];
  readonly switchClosed: boolean | null;
  readonly ignitionOn: boolean;
  readonly batteryConnected: boolean;
}

/** Which half of a parted plug a lead sat on, seen along the circuit. */
export type PlugSide = 'first-end' | 'second-end';

/** Where a meter lead sat. */
export type ProbePlace =
  | {
      readonly on: 'wire';
      readonly nodeId: NodeId;
      readonly circuitId?: CircuitId | undefined;
      readonly side?: PlugSide | undefined;
    }
  | { readonly on: 'body' }
  | { readonly on: 'battery-positive' };

/** A figure, or what the meter showed instead of one. */
export type Shown = number | 'open-line' | 'over-range';

/** One electrical test and what it showed. */
export type ElectricalReading =
  | { readonly test: 'ohms'; readonly from: ProbePlace; readonly to: ProbePlace; readonly ohms: Shown }
  | { readonly test: 'beep'; readonly from: ProbePlace; readonly to: ProbePlace; readonly beeps: boolean }
  | { readonly test: 'volts'; readonly from: ProbePlace; readonly to: ProbePlace; readonly volts: number }
  | {
      readonly test: 'drop';
      readonly driven: ProbePlace;
      readonly sensed: ProbePlace;
      readonly currentA: number;
      readonly millivolts: number;
    }
  | { readonly test: 'capacitance'; readonly at: ProbePlace; readonly picofarads: number };

/**
 * True for the tests that this room can reason about; symptom, movement and function tests are judged
 * by place, not by circuit.
 * @example
 * isElectrical({ test: 'symptom', stays: true }) // => false
 */
export function isElectrical<R extends { readonly test: string }>(
  reading: R,
): reading is Extract<R, { readonly test: ElectricalReading['test'] }> {
  return ['ohms', 'beep', 'volts', 'drop', 'capacitance'].includes(reading.test);
}
