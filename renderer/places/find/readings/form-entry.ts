import type { CircuitLine } from '#core/circuit/circuit-line.ts';
import type { Probe, Reading, Stretch } from '#core/job/reading.ts';
import type { NewEntry } from '../../../session/job-session.ts';
import { stretchesBetween } from '../../../session/stretches-between.ts';
import { mostDropCurrentA } from './form-cautions.ts';
import { leadKey } from './lead.ts';
import { type FigureTrouble, type FigureUnit, parseFigure } from './parse-figure.ts';
import type { ReadingForm } from './reading-form.ts';

/** Which part of the form is not yet a reading, and why. */
export type FormTrouble =
  | { readonly at: 'figure'; readonly why: FigureTrouble | 'negative' | 'no-figure-here' | 'too-high' }
  | { readonly at: 'current'; readonly why: FigureTrouble | 'no-figure-here' }
  | { readonly at: 'current'; readonly why: 'zero' }
  | { readonly at: 'current'; readonly why: 'too-much'; readonly mostA: number }
  | { readonly at: 'leads'; readonly why: 'same-place' }
  | { readonly at: 'yes'; readonly why: 'not-said' }
  | { readonly at: 'counts'; readonly why: 'not-whole' | 'none-tried' | 'more-than-tried' }
  | { readonly at: 'place'; readonly why: 'none' }
  | { readonly at: 'apart'; readonly why: 'none' };

export type FormAnswer =
  | { readonly ok: true; readonly entry: NewEntry & { readonly type: 'reading' } }
  | { readonly ok: false; readonly troubles: readonly FormTrouble[] };

/** Units by test; tests not named have no figure. */
export const figureUnits: Readonly<Partial<Record<ReadingForm['test'], FigureUnit>>> = {
  ohms: 'ohm',
  volts: 'volt',
  drop: 'millivolt',
  capacitance: 'picofarad',
};

/**
 * What no meter shows on a car's low-voltage wiring, in the unit of each figure: a slip of the unit, or
 * wiring no reading is taken on. 60 V dc is where high voltage begins (UN R100); the rest is judgement.
 */
export const highestFigures: Readonly<Record<Exclude<FigureUnit, 'ampere'>, number>> = {
  ohm: 1e9,
  volt: 60,
  millivolt: 15_000,
  picofarad: 1e8,
};

/** The entry a form stands for, or everything that keeps it from being one. */
export function entryOf(form: ReadingForm, line: CircuitLine): FormAnswer {
  const troubles: FormTrouble[] = [];
  const reading = readingOf(form, line, troubles);
  if (!reading || troubles.length > 0) return { ok: false, troubles };
  const { state, note, meter } = form;
  return {
    ok: true,
    entry: {
      type: 'reading',
      reading,
      state,
      ...(meter ? { meter } : {}),
      note: note.trim(),
    },
  };
}

function readingOf(form: ReadingForm, line: CircuitLine, troubles: FormTrouble[]): Reading | null {
  const { from, to, test } = form;
  const twoLeads = test === 'ohms' || test === 'beep' || test === 'volts' || test === 'drop';
  if (twoLeads && samePlace(from, to, line)) troubles.push({ at: 'leads', why: 'same-place' });
  switch (test) {
    case 'ohms': {
      const ohms = form.instead ?? figure(form, 'ohm', troubles);
      if (typeof ohms === 'number' && ohms < 0) troubles.push({ at: 'figure', why: 'negative' });
      return ohms === null ? null : { test, from, to, ohms };
    }
    case 'beep':
      return withYes(form, troubles, (beeps) => ({ test, from, to, beeps }));
    case 'volts': {
      const volts = figure(form, 'volt', troubles);
      return typeof volts === 'number' ? { test, from, to, volts } : noFigure(volts, troubles);
    }
    case 'drop': {
      const currentA = current(form, mostDropCurrentA(line.circuit), troubles);
      const millivolts = figure(form, 'millivolt', troubles);
      if (typeof millivolts !== 'number') return noFigure(millivolts, troubles);
      if (currentA === null) return null;
      return { test, driven: from, sensed: to, currentA, millivolts };
    }
    case 'capacitance': {
      const picofarads = figure(form, 'picofarad', troubles);
      if (typeof picofarads !== 'number') return noFigure(picofarads, troubles);
      if (picofarads < 0) troubles.push({ at: 'figure', why: 'negative' });
      return { test, at: from, picofarads };
    }
    case 'symptom':
      if (form.state.apartNodeIds.length === 0) troubles.push({ at: 'apart', why: 'none' });
      return withYes(form, troubles, (stays) => ({ test, stays }));
    case 'move': {
      const stretches = stretchesOf(form, line);
      if (stretches.length === 0) troubles.push({ at: 'place', why: 'none' });
      const changed = wholeNumber(form.changed);
      const tried = wholeNumber(form.tried);
      if (changed === null || tried === null) troubles.push({ at: 'counts', why: 'not-whole' });
      else if (tried === 0) troubles.push({ at: 'counts', why: 'none-tried' });
      else if (changed > tried) troubles.push({ at: 'counts', why: 'more-than-tried' });
      return { test, stretches, changed: changed ?? 0, tried: tried ?? 1 };
    }
    case 'function':
      if (stretchesOf(form, line).length === 0) troubles.push({ at: 'place', why: 'none' });
      return withYes(form, troubles, (works) => ({ test, works, stretches: stretchesOf(form, line) }));
  }
}

function figure(
  form: ReadingForm,
  unit: Exclude<FigureUnit, 'ampere'>,
  troubles: FormTrouble[],
): number | 'open-line' | null {
  const parsed = parseFigure(form.figure, unit);
  if (parsed.kind === 'open-line') return 'open-line';
  if (parsed.kind === 'figure' && Math.abs(parsed.value) <= highestFigures[unit]) return parsed.value;
  troubles.push({ at: 'figure', why: parsed.kind === 'figure' ? 'too-high' : parsed.trouble });
  return null;
}

function current(form: ReadingForm, mostA: number, troubles: FormTrouble[]): number | null {
  const parsed = parseFigure(form.current, 'ampere');
  if (parsed.kind === 'open-line') troubles.push({ at: 'current', why: 'no-figure-here' });
  else if (parsed.kind === 'trouble') troubles.push({ at: 'current', why: parsed.trouble });
  else if (parsed.value <= 0) troubles.push({ at: 'current', why: 'zero' });
  else if (parsed.value > mostA) troubles.push({ at: 'current', why: 'too-much', mostA });
  else return parsed.value;
  return null;
}

/** An open line is an answer only to a question about ohms. */
function noFigure(shown: 'open-line' | null, troubles: FormTrouble[]): null {
  if (shown === 'open-line') troubles.push({ at: 'figure', why: 'no-figure-here' });
  return null;
}

function withYes(
  form: ReadingForm,
  troubles: FormTrouble[],
  make: (yes: boolean) => Reading,
): Reading | null {
  if (form.yes === null) {
    troubles.push({ at: 'yes', why: 'not-said' });
    return null;
  }
  return make(form.yes);
}

const stretchesOf = (form: ReadingForm, line: CircuitLine): Stretch[] => [
  ...form.pieces.flatMap((piece) => stretchesBetween(line, piece.fromMm, piece.toMm)),
  ...form.elsewhere,
];

const samePlace = (a: Probe, b: Probe, line: CircuitLine): boolean =>
  leadKey(a, line.circuit.id) === leadKey(b, line.circuit.id);

function wholeNumber(text: string): number | null {
  return /^\s*\d{1,4}\s*$/.test(text) ? Number(text) : null;
}
