import type { ClassFactors } from '../locate/prior.ts';
import type { Circuit } from '../map/records.ts';
import type { FailureType } from './job-document.ts';

/**
 * How the control unit watches the wire: pulled up (or driven from below), pulled down (or driven
 * from above), or not known. An open reads high on the one and low on the other.
 */
export type Watching = 'pulled-up' | 'pulled-down' | 'not-known';

/**
 * How a circuit is watched, from what sits at its ends.
 * @example
 * watching(sample.circuit) // => 'pulled-up'
 */
export function watching(circuit: Circuit): Watching {
  const kinds = circuit.ends.map((end) => end.kind);
  if (kinds.includes('module-input-pull-up') || kinds.includes('low-side-driver')) return 'pulled-up';
  return kinds.includes('high-side-driver') ? 'pulled-down' : 'not-known';
}

type Row = readonly [
  ground: number,
  supply: number,
  open: number,
  series: number,
  wireToWire: number,
  component: number,
];

/**
 * Factor of each class for each reported failure type. Wording of the types is SAE J2012's (from
 * memory of the standard); the factors are judgement and never above 8, because the control unit
 * sees volts and not their cause.
 */
const rows: Readonly<Record<FailureType, Row>> = {
  'circuit-short-to-ground': [8, 0.2, 0.3, 0.2, 2, 3],
  'circuit-short-to-battery': [0.2, 8, 0.3, 0.3, 3, 2],
  'circuit-open': [0.2, 0.5, 8, 3, 0.3, 3],
  'circuit-short-to-ground-or-open': [5, 0.2, 5, 2, 1, 2],
  'circuit-short-to-battery-or-open': [0.2, 5, 5, 2, 1, 2],
  'circuit-voltage-below-threshold': [3, 0.5, 1, 2, 2, 2],
  'circuit-voltage-above-threshold': [0.5, 3, 1, 2, 2, 2],
  'circuit-current-below-threshold': [0.5, 1, 5, 5, 1, 2],
  'circuit-current-above-threshold': [4, 2, 0.2, 0.2, 1, 2],
  'circuit-resistance-below-threshold': [4, 1, 0.2, 0.2, 2, 3],
  'circuit-resistance-above-threshold': [0.3, 1, 4, 5, 0.5, 3],
  'circuit-intermittent': [1, 1, 2, 3, 1, 1],
  'signal-stuck-low': [1, 0.3, 1, 1, 2, 4],
  'signal-stuck-high': [0.3, 4, 1, 1, 2, 4],
  'signal-erratic': [1, 1, 2, 2, 2, 2],
  'not-known': [1, 1, 1, 1, 1, 1],
};

/** Where the way of watching decides what an open or a leak to ground looks like (judgement). */
const whenWatched: Partial<Record<FailureType, Partial<Record<Watching, Partial<ClassFactors>>>>> = {
  'circuit-short-to-battery': { 'pulled-up': { open: 2 } },
  'circuit-voltage-below-threshold': { 'pulled-down': { open: 2 } },
  'circuit-voltage-above-threshold': { 'pulled-up': { open: 2 } },
  'signal-stuck-low': { 'pulled-up': { 'short-to-ground': 4 }, 'pulled-down': { open: 3 } },
  'signal-stuck-high': { 'pulled-up': { open: 3 } },
};

/**
 * Factors on the class prior for a reported failure type on a circuit.
 * @example
 * failureTypeFactors('circuit-open', sample.circuit).open // => 8
 */
export function failureTypeFactors(failureType: FailureType, circuit: Circuit): ClassFactors {
  const [ground, supply, open, series, wireToWire, component] = rows[failureType];
  return {
    'short-to-ground': ground,
    'short-to-supply': supply,
    open,
    'high-resistance': series,
    'wire-to-wire': wireToWire,
    component,
    ...whenWatched[failureType]?.[watching(circuit)],
  };
}
