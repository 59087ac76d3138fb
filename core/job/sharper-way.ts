import { type CircuitLine, lineEnds } from '../circuit/circuit-line.ts';
import { bareState, withEndsApart } from '../circuit/circuit-network.ts';
import { handMeter } from '../circuit/default-meter-table.ts';
import { honestFloorMm } from '../circuit/honest-width.ts';
import { shownSpread } from '../circuit/meter.ts';
import { safeInjection, usualInjectionA } from '../circuit/safe-injection.ts';
import type { FaultClass } from '../map/kinds.ts';
import { conductorOhmsPerMetre } from '../wire/conductor-resistance.ts';
import type { FlatReading } from './ranking.ts';

/** How uneven a loom's capacitance is along a run, as the spread of a place found by it (judgement: 0.3 m on 4 m). */
export const capacitanceSpreadShare = 0.075;

/**
 * Spread of a place found by millivolts against a current in a wire: the meter's own, and the floor that
 * plug contacts and wire tolerance set. In mm.
 * @example
 * Math.round(dropSpreadMm(0.35, 0.1)) // => 64
 */
export function dropSpreadMm(conductorMm2: number, amps: number): number {
  const meterMm = shownSpread(handMeter.millivolts, 0) / (amps * conductorOhmsPerMetre(conductorMm2));
  return Math.hypot(meterMm, honestFloorMm);
}

/**
 * Why an electrical reading cannot place a fault of the likeliest class, and what would.
 * @example
 * sharperWay(sample.line, 'short-to-ground', 'ohms').better // => 'drop'
 */
export function sharperWay(line: CircuitLine, likeliest: FaultClass, test: string): FlatReading {
  const { circuit } = line;
  if (likeliest === 'open' || likeliest === 'high-resistance') {
    const byCapacitance = likeliest === 'open' && circuit.ends.every(({ nodeId }) => nodeId !== null);
    return {
      why: 'inside-one-access',
      better: byCapacitance ? 'capacitance' : 'unplug',
      expectedSdMm: byCapacitance ? capacitanceSpreadShare * line.lengthMm : null,
    };
  }
  const why = test === 'ohms' || test === 'beep' ? 'two-wire-ohms' : 'fault-strength-unknown';
  const apart = withEndsApart(bareState, lineEnds(line));
  const isFeed = circuit.ends.some(({ kind }) => kind === 'fused-supply');
  const answer = safeInjection(circuit, isFeed ? { ...apart, batteryConnected: true } : apart, {
    joined: line.branches,
  });
  if (answer.outcome === 'refused') return { why, better: 'unplug', expectedSdMm: null };
  const amps = answer.plan.way === 'limited-supply' ? usualInjectionA : answer.plan.amps;
  return { why, better: 'drop', expectedSdMm: dropSpreadMm(circuit.conductorMm2, amps) };
}
