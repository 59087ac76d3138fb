import type { HistoryEffect } from '#core/job/history-effect.ts';
import type { DigStep, Ranking, Told } from '#core/job/ranking.ts';
import { openingAnswerSentence, openingHistorySentence } from '../../../language/told.ts';

/** A rise under this is not worth a word. */
const leastRise = 0.005;

/** More lines than these under one opening would hide the next one. */
const mostLines = 3;

/**
 * What each thing known beforehand did to one opening, in sentences, the largest change first. An answer at intake
 * only ever raises the places it points to; that the rest then has a smaller share goes without saying.
 */
export function openingTold(step: DigStep, ranking: Ranking): readonly string[] {
  return [...(step.told ?? [])]
    .sort((a, b) => change(step, b.without) - change(step, a.without))
    .flatMap(({ told, without }) => {
      const sentence =
        told === 'past-jobs'
          ? openingHistorySentence(effectOn(step, ranking), without, step.probability)
          : step.probability > without
            ? openingAnswerSentence(told, without, step.probability)
            : null;
      return sentence ?? [];
    })
    .slice(0, mostLines);
}

const change = ({ probability }: DigStep, without: number): number => Math.abs(probability - without);

/** The strongest thing past jobs did to a cause that makes this opening's chance. */
function effectOn({ reason }: DigStep, { told }: Ranking): HistoryEffect | null {
  const effects = told?.pastJobs?.effects ?? [];
  return (
    effects.find((effect) =>
      reason.causes.some(({ cause, thing }) => cause === effect.cause && thing === effect.thing),
    ) ?? null
  );
}

/** The opening that one thing known beforehand raised most, with its chance without it; null where it raised none. */
export function mostRaised(
  ranking: Ranking,
  told: Told,
): { readonly step: DigStep; readonly without: number } | null {
  let most: { readonly step: DigStep; readonly without: number } | null = null;
  for (const step of ranking.digPlan) {
    const without = step.told?.find((each) => each.told === told)?.without;
    if (without === undefined || step.probability - without < leastRise) continue;
    if (!most || step.probability - without > most.step.probability - most.without) most = { step, without };
  }
  return most;
}
