import { accuracyLimit, type Meter } from '../circuit/meter.ts';
import type { Reading } from './reading.ts';
import { wholeByCapacitance } from './sound-capacitance.ts';
import { openLineOhms, type SoundExpectation } from './sound-expectation.ts';

/** Contact of two hand-held tips and the spread of wire ohms about the table's. Judgement. */
const tipOhms = 0.2;
const wireShare = 0.15;

/** The last digit of a hand meter's ampere range; below it no current flows. From memory. */
export const noCurrentA = 0.01;

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
      return soundCurrent(expected, reading.currentA);
    case 'capacitance':
      return expected.what === 'capacitance' ? wholeByCapacitance(expected, reading.picofarads) : null;
    case 'beep':
      if (expected.what === 'beeps' && !expected.rough) return reading.beeps;
      return expected.what === 'silent' && !expected.rough ? !reading.beeps : null;
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

/**
 * Whether the current a drop test drives after the repair is what a sound circuit lets through. Null where
 * parts of only roughly known size are plugged in, or it could not be worked out.
 * @example
 * soundCurrent({ what: 'current', amps: 0, rough: false }, 1.8) // => false
 */
export function soundCurrent(expected: SoundExpectation, amps: number): boolean | null {
  if (expected.what !== 'current' || expected.rough) return null;
  return Math.abs(amps - expected.amps) <= noCurrentA + wireShare * expected.amps;
}
