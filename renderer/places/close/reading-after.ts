import type { EntryOf } from '#core/job/job-document.ts';
import type { ProofItem } from '#core/job/proof-checklist.ts';
import type { Reading } from '#core/job/reading.ts';

/** What was typed of a test tried again; null where nothing was yet. */
export interface TypedAfter {
  readonly figure: number | null;
  readonly openLine: boolean;
  readonly beeps: boolean | null;
  readonly millivolts: number | null;
  readonly changed: number | null;
  readonly tried: number | null;
}

export const nothingTyped: TypedAfter = {
  figure: null,
  openLine: false,
  beeps: null,
  millivolts: null,
  changed: null,
  tried: null,
};

/** What the test shows now, as a reading; null where it has no figure or none was typed. */
export function readingAfter(
  { check, repeats }: ProofItem,
  cause: EntryOf<'finding'> | null,
  typed: TypedAfter,
): Reading | null {
  const { figure, changed, tried } = typed;
  if (check === 'move') {
    const stretches = repeats?.reading.test === 'move' ? repeats.reading.stretches : cause?.stretches;
    if (!stretches || changed === null || tried === null) return null;
    return {
      test: 'move',
      stretches: [...stretches],
      changed: Math.round(changed),
      tried: Math.round(tried),
    };
  }
  if (check !== 'reading' || !repeats) return null;
  const { reading } = repeats;
  switch (reading.test) {
    case 'ohms':
      if (typed.openLine) return { ...reading, ohms: 'open-line' };
      return figure === null ? null : { ...reading, ohms: Math.max(0, figure) };
    case 'volts':
      return figure === null ? null : { ...reading, volts: figure };
    case 'beep':
      return typed.beeps === null ? null : { ...reading, beeps: typed.beeps };
    case 'capacitance':
      return figure === null ? null : { ...reading, picofarads: Math.max(0, figure) };
    case 'drop':
      // Without current there is no drop, and so no reading; the current itself is kept beside it.
      if (figure === null || figure <= 0 || typed.millivolts === null) return null;
      return { ...reading, currentA: figure, millivolts: typed.millivolts };
    default:
      return null;
  }
}

/** Whether a test is answered by something typed or chosen, not by Good alone. */
export const asksSomething = ({ check, repeats }: ProofItem): boolean =>
  check === 'reading' &&
  ['ohms', 'volts', 'beep', 'capacitance', 'drop'].includes(repeats?.reading.test ?? '');
