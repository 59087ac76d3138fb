import type { CircuitState, ProbePlace } from '#core/circuit/car-state.ts';
import type { NextTest } from '#core/job/next-test.ts';
import type { Reading } from '#core/job/reading.ts';
import type { NodeId } from '#core/quantity/id.ts';
import type { FaultyWire } from './faulty-wire.ts';

/** A reading as it goes into the record, with how the car stood. */
export interface AskedReading {
  readonly reading: Reading;
  readonly state: CircuitState;
}

/**
 * What a technician writes down after doing the test that was asked for. Where no current flows, the ohms
 * that keep it from flowing are read instead; where no capacitance holds still, there is nothing to write.
 */
export function askedReadings(test: NextTest, wire: FaultyWire): AskedReading[] {
  const { state, kind, nodeIds } = test;
  const [first, second] = nodeIds;
  const on = (nodeId: NodeId): ProbePlace => {
    const side = test.sides[nodeIds.indexOf(nodeId)];
    return side ? { on: 'wire', nodeId, side } : { on: 'wire', nodeId };
  };
  const told = (reading: Reading): AskedReading => ({ reading, state });
  const ohms = (nodeId: NodeId): AskedReading => {
    const reading = { test: 'ohms', from: on(nodeId), to: { on: 'body' }, ohms: 1 } as const;
    return told({ ...reading, ohms: wire.ohms(reading, state) });
  };
  const drop = (driven: NodeId, sensed: NodeId, amps: number): AskedReading => {
    const reading = {
      test: 'drop',
      driven: on(driven),
      sensed: on(sensed),
      currentA: amps,
      millivolts: 1,
    } as const;
    const millivolts = wire.millivolts(reading, state, amps);
    return millivolts === null ? ohms(driven) : told({ ...reading, millivolts });
  };
  if (kind === 'unplug') return [told({ test: 'symptom', stays: wire.symptomStays(state.apartNodeIds) })];
  if (kind === 'move') {
    const changed = test.ranges.some(({ fromMm, toMm }) => wire.moves(fromMm, toMm)) ? 1 : 0;
    return [told({ test: 'move', stretches: [...test.stretches], changed, tried: 1 })];
  }
  if (kind === 'ohms-to-body' && first) return [ohms(first)];
  if (!first || !second) throw new Error(`${kind} needs both ends`);
  if (kind === 'ohms-through') {
    const reading = { test: 'ohms', from: on(first), to: on(second), ohms: 1 } as const;
    return [told({ ...reading, ohms: wire.ohms(reading, state) })];
  }
  if (kind === 'beep') {
    const reading = { test: 'beep', from: on(first), to: on(second), beeps: true } as const;
    return [told({ ...reading, beeps: wire.beeps(reading, state) })];
  }
  if (kind === 'ohms-both-ends') return [ohms(first), ohms(second)];
  if (kind === 'capacitance')
    return [first, second].flatMap((nodeId) => {
      const picofarads = wire.picofarads(on(nodeId), state);
      return picofarads === null ? [] : [told({ test: 'capacitance', at: on(nodeId), picofarads })];
    });
  const amps = test.injection?.amps ?? 0;
  if (kind === 'drop') return [drop(first, second, amps)];
  if (kind === 'drop-both-ends') {
    const one = drop(first, second, amps);
    return one.reading.test === 'drop' ? [one, drop(second, first, amps)] : [one];
  }
  throw new Error(`no car drawn here has ends for ${kind}`);
}
