import type { MapDocument } from '../map/map-document.ts';
import type { PanelId } from '../quantity/id.ts';
import type { DigStep } from './ranking.ts';

/** What it takes to see the next places of the plan, and to put everything back. */
export interface NextPlacesCost {
  readonly steps: readonly DigStep[];
  /** Taking off and looking. */
  readonly minutes: number;
  /** Putting what comes off for them back on. */
  readonly refitMinutes: number;
  /** Chance that the fault is seen by then. */
  readonly probability: number;
  /** In the shop's currency; null without an hourly rate. */
  readonly amount: number | null;
}

/**
 * What reaching the next places costs, to be read out on the telephone: the first `count` openings of the
 * plan, in minutes, with the refit of what comes off for them. Minutes are the map's own figures.
 * @example
 * nextPlacesCost(sample.map, [], 3, 60) // => { steps: [], minutes: 0, refitMinutes: 0, probability: 0, amount: 0 }
 */
export function nextPlacesCost(
  map: MapDocument,
  digPlan: readonly DigStep[],
  count: number,
  hourlyRate: number | null,
): NextPlacesCost {
  const steps = digPlan.slice(0, count);
  const panelIds = new Set<PanelId>(steps.flatMap((step) => step.takeOff));
  const minutes = steps.reduce((sum, step) => sum + step.minutes, 0);
  const refitMinutes = [...panelIds].reduce((sum, id) => sum + (map.panels.get(id)?.minutesOn ?? 0), 0);
  return {
    steps,
    minutes,
    refitMinutes,
    probability: steps.at(-1)?.runningProbability ?? 0,
    amount: hourlyRate === null ? null : ((minutes + refitMinutes) / 60) * hourlyRate,
  };
}
