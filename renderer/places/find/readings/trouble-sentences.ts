import { assert } from '#core/quantity/assert.ts';
import { readingWords, troubleWords, unitsTyped } from '../../../language/readings.ts';
import { figureText, sayAmps } from '../../../language/say-figure.ts';
import { type FormTrouble, figureUnits } from './form-entry.ts';
import { type MeterTrouble, meterFigures } from './meter-draft.ts';
import type { FigureUnit } from './parse-figure.ts';
import type { ReadingForm } from './reading-form.ts';

/** What keeps a form from being a reading, each thing once. */
export function troubleSentences(
  troubles: readonly FormTrouble[],
  form: Pick<ReadingForm, 'test'>,
): readonly string[] {
  return [...new Set(troubles.map((trouble) => sentence(trouble, form)))];
}

function sentence(trouble: FormTrouble, { test }: Pick<ReadingForm, 'test'>): string {
  switch (trouble.at) {
    case 'figure':
      switch (trouble.why) {
        case 'empty':
          return test === 'ohms' ? troubleWords.figure.empty : troubleWords.figure['empty-plain'];
        case 'other-unit':
          return troubleWords.otherUnit(unitsOf(test));
        case 'too-high':
          return troubleWords.tooHigh[measures(test)];
        default:
          return troubleWords.figure[trouble.why];
      }
    case 'current':
      return currentSentence(trouble);
    case 'leads':
      return troubleWords.leads;
    case 'yes':
      return troubleWords.yes;
    case 'counts':
      return troubleWords.counts[trouble.why];
    case 'place':
      return test === 'function' ? troubleWords.placeOfPosition : troubleWords.place;
    case 'apart':
      return troubleWords.apart;
  }
}

function currentSentence(trouble: Extract<FormTrouble, { at: 'current' }>): string {
  switch (trouble.why) {
    case 'too-much':
      return troubleWords.current.tooMuch(figureText(sayAmps(trouble.mostA)));
    case 'other-unit':
      return troubleWords.otherUnit(unitsTyped.ampere);
    case 'not-a-figure':
    case 'two-marks':
      return troubleWords.figure[trouble.why];
    case 'empty':
    case 'zero':
    case 'no-figure-here':
      return troubleWords.current[trouble.why];
  }
}

/** What the figure of a test measures; only tests with a figure have trouble with one. */
function measures(test: ReadingForm['test']): Exclude<FigureUnit, 'ampere'> {
  const unit = figureUnits[test];
  assert(unit && unit !== 'ampere', 'trouble with a figure comes from a test that has one');
  return unit;
}

const unitsOf = (test: ReadingForm['test']): string => unitsTyped[measures(test)];

/** What is wrong in the description of a meter. */
export function meterTroubleSentence(trouble: MeterTrouble): string {
  switch (trouble.why) {
    case 'missing':
      return meterWords.nameMissing;
    case 'taken':
      return meterWords.nameTaken;
    case 'not-a-figure':
      return meterWords.notAFigure;
    case 'out-of-bounds': {
      const { least, most } = meterFigures[trouble.at];
      return meterWords.between(String(least), String(most));
    }
  }
}

const meterWords = readingWords.meters;
