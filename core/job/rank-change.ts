import type { DigStep, Ranking } from './ranking.ts';

/** One opening with a place whose standing changed. */
export interface OpeningMove {
  /** The opening as it stands now, or as it stood when it is gone. */
  readonly step: DigStep;
  /** Rank before and after; null where it was not, or is no longer, in the plan. */
  readonly before: number | null;
  readonly after: number | null;
}

/** What a new entry did to the plan; each list by rank. */
export interface RankChange {
  readonly movedUp: readonly OpeningMove[];
  readonly movedDown: readonly OpeningMove[];
  readonly added: readonly OpeningMove[];
  readonly gone: readonly OpeningMove[];
}

/**
 * Which places changed their standing between two plans on the same map. Places are the circuit's
 * stretches and plugs, each where it is first looked at. Only as few places as can explain the new
 * order count as moved (the rest is the longest row that kept its order), so that one place dropping
 * to the end is one move down and not a move up of all the others. O(places^2).
 * @example
 * whatChanged(rank(sample.map, sample.job).value, rank(sample.map, sample.job).value).movedUp // => []
 */
export function whatChanged(before: Ranking, after: Ranking): RankChange {
  const old = firstLooks(before);
  const now = firstLooks(after);
  const oldOrder = [...old.keys()].filter((place) => now.has(place));
  const nowOrder = [...now.keys()].filter((place) => old.has(place));
  const oldPlace = new Map(oldOrder.map((place, i) => [place, i]));
  const from = nowOrder.map((place) => oldPlace.get(place) as number);
  const stayed = longestRising(from);
  const moved = nowOrder.filter((_, i) => !stayed.has(i));
  const rose = (place: string) => nowOrder.indexOf(place) < (oldPlace.get(place) as number);
  const moves = (places: readonly string[]): OpeningMove[] => {
    const byStep = new Map<DigStep, OpeningMove>();
    for (const place of places) {
      const step = (now.get(place) ?? old.get(place)) as DigStep;
      if (byStep.has(step)) continue;
      const ranks = { before: old.get(place)?.rank ?? null, after: now.get(place)?.rank ?? null };
      byStep.set(step, { step, ...ranks });
    }
    return [...byStep.values()].sort((a, b) => a.step.rank - b.step.rank);
  };
  return {
    movedUp: moves(moved.filter(rose)),
    movedDown: moves(moved.filter((place) => !rose(place))),
    added: moves([...now.keys()].filter((place) => !old.has(place))),
    gone: moves([...old.keys()].filter((place) => !now.has(place))),
  };
}

/** The first opening that shows each stretch and plug, in the order of the plan. */
function firstLooks({ digPlan, posterior }: Ranking): ReadonlyMap<string, DigStep> {
  const places = new Map<string, DigStep>();
  for (const step of digPlan) {
    const shown: string[] = [...(step.look.nodeIds ?? [])];
    for (const part of step.look.parts) {
      posterior.stretches.forEach((stretch, i) => {
        const overlapMm = Math.min(part.toMm, stretch.toMm) - Math.max(part.fromMm, stretch.fromMm);
        if (overlapMm > 0 && stretch.segmentId === part.segmentId) shown.push(`${stretch.segmentId} ${i}`);
      });
    }
    for (const place of shown) if (!places.has(place)) places.set(place, step);
  }
  return places;
}

/** Indices of the longest row of rising numbers; of equal ones the earliest found. */
function longestRising(numbers: readonly number[]): ReadonlySet<number> {
  const length = numbers.map(() => 1);
  const previous = numbers.map(() => -1);
  let end = numbers.length > 0 ? 0 : -1;
  for (let i = 0; i < numbers.length; i++) {
    for (let j = 0; j < i; j++) {
      if (
        (numbers[j] as number) < (numbers[i] as number) &&
        (length[j] as number) + 1 > (length[i] as number)
      ) {
        length[i] = (length[j] as number) + 1;
        previous[i] = j;
      }
    }
    if ((length[i] as number) > (length[end] as number)) end = i;
  }
  const row = new Set<number>();
  for (let at = end; at >= 0; at = previous[at] as number) row.add(at);
  return row;
}
