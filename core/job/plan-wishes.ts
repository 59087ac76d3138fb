import type { PanelId } from '../quantity/id.ts';
import type { JobEntry } from './job-document.ts';

/** What the user wishes of the plan, as its record stands. */
export interface PlanWishes {
  readonly notToday: readonly PanelId[];
  readonly comingOutAnyway: readonly PanelId[];
  readonly eitherPanels: readonly (readonly [PanelId, PanelId])[];
  readonly timeBoxMinutes: number | undefined;
  readonly usePastJobs: boolean;
}

const samePair = (a: readonly [PanelId, PanelId], b: readonly [PanelId, PanelId]): boolean =>
  (a[0] === b[0] && a[1] === b[1]) || (a[0] === b[1] && a[1] === b[0]);

/**
 * The wishes that stand: of two about the same thing the later one counts. Past jobs are used unless
 * switched off. O(entries x pairs).
 * @example
 * planWishes(sample.job.entries) // => { notToday: [], comingOutAnyway: [], eitherPanels: [], timeBoxMinutes: undefined, usePastJobs: true }
 */
export function planWishes(entries: readonly JobEntry[]): PlanWishes {
  const notToday = new Set<PanelId>();
  const comingOutAnyway = new Set<PanelId>();
  let eitherPanels: (readonly [PanelId, PanelId])[] = [];
  let timeBoxMinutes: number | undefined;
  let usePastJobs = true;
  for (const entry of entries) {
    if (entry.type === 'panel-wish') {
      notToday.delete(entry.panelId);
      comingOutAnyway.delete(entry.panelId);
      if (entry.wish === 'stays-on') notToday.add(entry.panelId);
      if (entry.wish === 'out-anyway') comingOutAnyway.add(entry.panelId);
    }
    if (entry.type === 'either-panel') {
      eitherPanels = eitherPanels.filter((pair) => !samePair(pair, entry.panelIds));
      if (entry.either) eitherPanels.push(entry.panelIds);
    }
    if (entry.type === 'time-box') timeBoxMinutes = entry.minutes ?? undefined;
    if (entry.type === 'past-jobs') usePastJobs = entry.use;
  }
  return {
    notToday: [...notToday],
    comingOutAnyway: [...comingOutAnyway],
    eitherPanels,
    timeBoxMinutes,
    usePastJobs,
  };
}
