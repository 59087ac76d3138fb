import type { CircuitLine } from '#core/circuit/circuit-line.ts';
import type { Probe, Reading } from '#core/job/reading.ts';
import type { NewEntry } from '../../../session/job-session.ts';
import { stretchesBetween } from '../../../session/stretches-between.ts';
import { mostDropCurrentA } from './form-cautions.ts';
import { leadKey } from './lead.ts';
import { type FigureTrouble, type FigureUnit, parseFigure } from './parse-figure.ts';
import type { ReadingForm } from './reading-form.ts';

/** Which part of the form is not yet a reading, and why. */
export type FormTrouble =
  | { readonly at: 'figure' | 'current'; readonly why: FigureTrouble | 'negative' | 'no-figure-here' }
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

/** The entry a form stands for, or everything that keeps it from being one. */
export function entryOf(form: ReadingForm, line: CircuitLine): FormAnswer {
  const troubles: FormTrouble[] = [];
  const reading = readingOf(form, line, troubles);
  if (!reading || troubles.length > 0) return { ok: false, troubles };
  const { state, note, meter } = form;
  const measured = figureUnits[form.test] !== undefined || form.test === 'beep';
  return {
    ok: true,
    entry: {
      type: 'reading',
      reading,
      state,
      ...(measured && meter ? { meter } : {}),
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
      const ohms = form.instead ?? figure(form, 'figure', 'ohm', troubles);
      if (typeof ohms === 'number' && ohms < 0) troubles.push({ at: 'figure', why: 'negative' });
      return ohms === null ? null : { test, from, to, ohms };
    }
    case 'beep':
      return withYes(form, troubles, (beeps) => ({ test, from, to, beeps }));
    case 'volts': {
      const volts = figure(form, 'figure', 'volt', troubles);
      return typeof volts === 'number' ? { test, from, to, volts } : noFigure(volts, troubles);
    }
    case 'drop': {
      const millivolts = figure(form, 'figure', 'millivolt', troubles);
      const currentA = figure(form, 'current', 'ampere', troubles);
      if (typeof currentA === 'number' && currentA <= 0) troubles.push({ at: 'current', why: 'zero' });
      const mostA = mostDropCurrentA(line.circuit);
      if (typeof currentA === 'number' && currentA > mostA)
        troubles.push({ at: 'current', why: 'too-much', mostA });
      if (millivolts === 'open-line' || currentA === 'open-line') return noFigure('open-line', troubles);
      if (millivolts === null || currentA === null) return null;
      return { test, driven: from, sensed: to, currentA, millivolts };
    }
    case 'capacitance': {
      const picofarads = figure(form, 'figure', 'picofarad', troubles);
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
      return withYes(form, troubles, (works) => ({ test, works, stretches: stretchesOf(form, line) }));
  }
}

function figure(
  form: ReadingForm,
  at: 'figure' | 'current',
  unit: FigureUnit,
  troubles: FormTrouble[],
): number | 'open-line' | null {
  const parsed = parseFigure(form[at], unit);
  if (parsed.kind === 'figure') return parsed.value;
  if (parsed.kind === 'open-line') return 'open-line';
  troubles.push({ at, why: parsed.trouble });
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

const stretchesOf = (form: ReadingForm, line: CircuitLine): Extract<Reading, { test: 'move' }>['stretches'] =>
  form.pieces.flatMap((piece) => [...stretchesBetween(line, piece.fromMm, piece.toMm)]);

const samePlace = (a: Probe, b: Probe, line: CircuitLine): boolean =>
  leadKey(a, line.circuit.id) === leadKey(b, line.circuit.id);

function wholeNumber(text: string): number | null {
  return /^\s*\d{1,4}\s*$/.test(text) ? Number(text) : null;
}
