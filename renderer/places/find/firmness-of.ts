import type { NamedOpening, OpeningFirmness } from '#core/job/rank-sensitivity.ts';
import type { DigStep } from '#core/job/ranking.ts';
import { toldWords } from '../../language/told.ts';

/** How firm an opening is; null where that speaks of another opening, or is not worked out. */
export function firmnessOf(
  step: DigStep,
  firmness: readonly OpeningFirmness[] | null,
): OpeningFirmness | null {
  const told = firmness?.find(({ rank }) => rank === step.rank);
  if (!told) return null;
  const same =
    step.takeOff.length > 0
      ? sameThings(step.takeOff, told.opening.takeOff)
      : told.opening.takeOff.length === 0 && sameThings(step.look.segmentIds, told.opening.segmentIds);
  return same ? told : null;
}

const sameThings = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && [...a].sort().join() === [...b].sort().join();

/** An opening in a few names: what comes off, or the runs that are open already. */
export function openingName({ takeOff, segmentIds }: NamedOpening, nameOf: (id: string) => string): string {
  if (takeOff.length > 0) return takeOff.map(nameOf).join(', ');
  return toldWords.firm.open(segmentIds.map(nameOf).join(', '));
}
