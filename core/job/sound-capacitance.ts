import { strayPicofarads } from '../circuit/capacitance-likelihood.ts';
import type { CircuitState } from '../circuit/car-state.ts';
import type { CircuitLine } from '../circuit/circuit-line.ts';
import { shownSpread } from '../circuit/meter.ts';
import { wireSeen } from '../circuit/usable-readings.ts';
import type { EntryOf } from './job-document.ts';
import { meterOf } from './meter-record.ts';
import type { Reading } from './reading.ts';

/** Picofarad between which a whole wire reads. */
export interface SoundCapacitance {
  readonly what: 'capacitance';
  readonly fromPf: number;
  readonly toPf: number;
  /** What it rests on: what both ends of this wire showed before, or only what wires of its length usually have. */
  readonly by: 'both-ends' | 'usual-wire';
  /** Less than this was shown before the repair already, and a whole wire shows more. Null: no such reading. */
  readonly beforePf: number | null;
}

type CapacitanceTest = Extract<Reading, { test: 'capacitance' }>;

/** A wire in a loom against everything around it, picofarad a metre: from memory. */
const leastPerMetre = 20;
const mostPerMetre = 100;

/** Two standard deviations either way. */
const coverage = 2;

/**
 * What a capacitance test shows on the whole wire. With an open each lead sees the wire up to it, so what both
 * ends showed before comes to the whole wire's figure, whatever the loom has a metre. Without the second end only
 * the usual bounds for the length can be said. Null where the lead is not on the wire or a part is plugged in.
 * @example
 * soundCapacitance(sample.line, { test: 'capacitance', at: { on: 'wire', nodeId: 'node:west' }, picofarads: 20 }, { ...bareState, apartNodeIds: ['node:west', 'node:far'] }, []).toPf // => 150
 */
export function soundCapacitance(
  line: CircuitLine,
  reading: CapacitanceTest,
  state: CircuitState,
  before: readonly EntryOf<'reading'>[],
): SoundCapacitance | null {
  const seen = seenWhole(line, reading, state);
  if (seen === null) return null;
  const same = before.flatMap((entry) => {
    if (entry.reading.test !== 'capacitance') return [];
    if (seenWhole(line, entry.reading, entry.state) !== seen) return [];
    const { capacitance } = meterOf(entry.meter);
    const { picofarads } = entry.reading;
    const spreadPf = Math.hypot(capacitance ? shownSpread(capacitance, picofarads) : 10, strayPicofarads);
    return [{ at: leadKey(entry.reading), picofarads, spreadPf }];
  });
  const own = same.findLast(({ at }) => at === leadKey(reading)) ?? null;
  const beforePf = own?.picofarads ?? null;
  const other = own ? same.findLast(({ at }) => at !== own.at) : undefined;
  if (own && other) {
    const wholePf = own.picofarads + other.picofarads;
    // The new reading has an uncertainty of its own as well, about as large.
    const aboutPf =
      coverage * Math.hypot(own.spreadPf, other.spreadPf, Math.max(own.spreadPf, other.spreadPf));
    return {
      what: 'capacitance',
      fromPf: Math.max(0, wholePf - aboutPf),
      toPf: wholePf + aboutPf,
      by: 'both-ends',
      beforePf,
    };
  }
  const metres = seen / 1000;
  return {
    what: 'capacitance',
    fromPf: Math.max(leastPerMetre * metres, beforePf ?? 0),
    toPf: mostPerMetre * metres,
    by: 'usual-wire',
    beforePf,
  };
}

/**
 * Whether a figure is that of the whole wire. Null where only usual bounds are known and it does not fall
 * back to what the broken wire showed.
 * @example
 * wholeByCapacitance({ what: 'capacitance', fromPf: 140, toPf: 160, by: 'both-ends', beforePf: 50 }, 148) // => true
 */
export function wholeByCapacitance(expected: SoundCapacitance, picofarads: number): boolean | null {
  const { fromPf, toPf, by, beforePf } = expected;
  if (by === 'both-ends') return picofarads >= fromPf && picofarads <= toPf;
  return beforePf !== null && picofarads <= beforePf ? false : null;
}

/** Length in mm the lead sees of the unbroken wire. */
function seenWhole(line: CircuitLine, { at }: CapacitanceTest, state: CircuitState): number | null {
  const { seenMm, pluggedIn } = wireSeen(line, at, state);
  return seenMm && !pluggedIn ? seenMm(null) : null;
}

const leadKey = ({ at }: CapacitanceTest): string => JSON.stringify(at);
