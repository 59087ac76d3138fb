import type { CauseShare } from '#core/chafe/cause.ts';
import type { Reason } from '#core/job/ranking.ts';
import { causeWords, whyLine } from './hazard.ts';
import type { LengthSystem } from './say-length.ts';

/** Openings nearer than this to the mean are neither quick nor slow. */
const worthSaid = 1.3;

/**
 * Why a place ranks where it does, in one line: the main causes with their shares and how the loom is held, then
 * what the opening costs for its chance. A second look is at the same place for the same reasons. `nameOf` gives
 * the user's name of a record.
 */
export function reasonSentence(
  reason: Reason,
  nameOf: (id: string) => string,
  lengths: LengthSystem = 'metric',
): string {
  const worth = worthSentence(reason);
  if (reason.secondLook) return worth;
  const why = whyLine(reason.causes, nameOf, lengths) || `${causeWords(evenCause, nameOf, lengths)}.`;
  return worth === '' ? why : `${why} ${worth}`;
}

const evenCause: CauseShare = { cause: 'anywhere', thing: null, share: 1, figures: {} };

/** What an opening costs for its chance; empty where it is as usual. */
export function worthSentence({ worthRatio, alreadyOpen, secondLook }: Reason): string {
  if (secondLook) return 'A second look, for what the first may have missed.';
  if (alreadyOpen) return 'Already open.';
  if (worthRatio >= worthSaid) return `${worthRatio.toFixed(1)} times the usual chance for each minute.`;
  if (worthRatio <= 1 / worthSaid) return 'Slow to reach for its chance.';
  return '';
}
