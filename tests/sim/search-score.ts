import type { Look } from '#core/dig/look.ts';
import type { DigOpening } from '#core/dig/plan-dig.ts';
import type { Panel } from '#core/map/records.ts';
import type { PanelId } from '#core/quantity/id.ts';
import type { SearchStep } from './simple-orders.ts';

/** What a search comes to on one car. */
export interface SearchScore {
  /** Mean minutes until the fault is seen; with all trim off, places are gone over again until it is. */
  readonly minutes: number;
  /** Chance that it is seen before anything further is opened. */
  readonly firstOpening: number;
}

/** Rounds over the whole loom after which the little that is left is let go. */
const mostRounds = 30;

/**
 * Mean minutes over where the fault really is (`chanceAt` each look, adding up to one) and over what each
 * look overlooks (`quality`). Exact, not drawn: each look finds its share of what is left there.
 */
export function searchScore<L extends Look>(
  steps: readonly SearchStep<L>[],
  chanceAt: (look: L) => number,
  quality: number,
): SearchScore {
  const left = new Map<L, number>();
  for (const { look } of steps) left.set(look, chanceAt(look));
  let minutes = 0;
  let cost = 0;
  let firstOpening = 0;
  const take = (look: L, spent: number): number => {
    minutes += spent;
    const found = (left.get(look) ?? 0) * quality;
    left.set(look, (left.get(look) ?? 0) - found);
    cost += found * minutes;
    return found;
  };
  for (const { minutes: spent, look, opening } of steps) {
    const found = take(look, spent);
    if (opening === 0) firstOpening += found;
  }
  for (let round = 0; round < mostRounds; round++) {
    const again = [...left].sort(([a, p], [b, q]) => q / b.minutes - p / a.minutes);
    for (const [look] of again) take(look, look.minutes);
  }
  return { minutes: cost, firstOpening };
}

/** A plan's openings as steps. */
export function planSteps<L extends Look>(
  openings: readonly DigOpening<L>[],
  panels: ReadonlyMap<PanelId, Panel>,
): SearchStep<L>[] {
  return openings.flatMap(({ takeOff, looks }, opening) => {
    const setup = takeOff.reduce((sum, id) => sum + (panels.get(id)?.minutesOff ?? 0), 0);
    return looks.map((look, i) => ({ minutes: look.minutes + (i === 0 ? setup : 0), look, opening }));
  });
}
