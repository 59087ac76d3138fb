import type { DigStep } from '#core/job/ranking.ts';
import { sayMinutes } from '../../language/find.ts';
import { nameOf } from '../../language/name-of.ts';
import { firmSentence, toldWords } from '../../language/told.ts';
import { useFind } from './find-context.ts';
import { firmnessOf, openingName } from './firmness-of.ts';

/** How firm an opening's place is, and what beginning there instead of with the first would lose. */
export function OpeningStanding({ step }: { readonly step: DigStep }) {
  const { open, say } = useFind();
  const { firmness, map } = open;
  const firm = firmnessOf(step, firmness);
  const lines: string[] = [];
  if (firm) {
    const rival = firm.rival ? openingName(firm.rival, (id) => say(nameOf(map, id))) : '';
    lines.push(firmSentence(firm, rival));
  }
  const regret = step.rank > 1 && !step.reason.secondLook ? regretSentence(step) : null;
  if (regret) lines.push(regret);
  if (lines.length === 0) return null;
  return <p className="dig-standing">{lines.join('. ')}.</p>;
}

/** What beginning with this opening loses on average; null where it is not known. */
export function regretSentence({ regretMinutes, asGoodAsFirst }: DigStep): string | null {
  if (regretMinutes === undefined) return null;
  if (asGoodAsFirst || regretMinutes < 0.5) return toldWords.regret.same;
  return toldWords.regret.costs(sayMinutes(regretMinutes));
}
