import type { DigStep, Ranking } from './ranking.ts';

/** One opening whose place in the order changed. */
export interface OpeningMove {
  /** The opening as it stands now, or as it stood when it is gone. */
  readonly step: DigStep;
  /** Rank before and after; null where it was not, or is no longer, in the plan. */
  readonly before: number | null;
  readonly after: number | null;
}

/** What a new entry did to the plan. */
export interface RankChange {
  readonly movedUp: readonly OpeningMove[];
  readonly movedDown: readonly OpeningMove[];
  readonly added: readonly OpeningMove[];
  readonly gone: readonly OpeningMove[];
}

/**
 * Which places changed their standing against one another between two plans, by new rank. A place is
 * told by the runs it shows; only first looks count, and an opening that merely slid because another
 * went away has not moved.
 * @example
 * whatChanged(rank(sample.map, sample.job).value, rank(sample.map, sample.job).value).movedUp // => []
 */
export function whatChanged(before: Ranking, after: Ranking): RankChange {
  const old = firstLooks(before);
  const now = firstLooks(after);
  const oldOrder = [...old.keys()].filter((place) => now.has(place));
  const nowOrder = [...now.keys()].filter((place) => old.has(place));
  const oldPlace = new Map(oldOrder.map((place, i) => [place, i]));
  const move = (place: string): OpeningMove => ({
    step: (now.get(place) ?? old.get(place)) as DigStep,
    before: old.get(place)?.rank ?? null,
    after: now.get(place)?.rank ?? null,
  });
  const shift = (place: string, i: number) => (oldPlace.get(place) as number) - i;
  return {
    movedUp: nowOrder.filter((place, i) => shift(place, i) > 0).map(move),
    movedDown: nowOrder.filter((place, i) => shift(place, i) < 0).map(move),
    added: [...now.keys()].filter((place) => !old.has(place)).map(move),
    gone: [...old.keys()].filter((place) => !now.has(place)).map(move),
  };
}

/** First opening that shows each place, in the order of the plan. */
function firstLooks(ranking: Ranking): ReadonlyMap<string, DigStep> {
  const places = new Map<string, DigStep>();
  for (const step of ranking.digPlan) {
    if (step.reason.secondLook) continue;
    const place = [...step.look.segmentIds, Math.round(step.look.fromMm), Math.round(step.look.toMm)].join(
      ' ',
    );
    if (!places.has(place)) places.set(place, step);
  }
  return places;
}
