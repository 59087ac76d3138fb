import { troubleWords } from '../../../language/readings.ts';
import { figureText, sayAmps } from '../../../language/say-figure.ts';
import type { FormTrouble } from './form-entry.ts';
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
      if (trouble.why === 'empty' && test !== 'ohms') return troubleWords.figure['empty-plain'];
      return troubleWords.figure[trouble.why];
    case 'current':
      if (trouble.why === 'too-much') return troubleWords.current.tooMuch(figureText(sayAmps(trouble.mostA)));
      if (trouble.why === 'empty' || trouble.why === 'zero') return troubleWords.current[trouble.why];
      return troubleWords.figure[trouble.why];
    case 'leads':
      return troubleWords.leads;
    case 'yes':
      return troubleWords.yes;
    case 'counts':
      return troubleWords.counts[trouble.why];
    case 'place':
      return troubleWords.place;
    case 'apart':
      return troubleWords.apart;
  }
}
