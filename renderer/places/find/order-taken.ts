import type { DigStep, Ranking } from '#core/job/ranking.ts';
import type { ChangeCause } from '../../session/job-session.ts';

/**
 * The opening the user took, when it was not the first of the order that was shown: a panel came off that
 * only a later one needs, or a place was looked at that a later one shows. Null when the order was followed.
 */
export function takenOutOfOrder(before: Ranking, causes: readonly ChangeCause[]): DigStep | null {
  const [first] = before.digPlan;
  if (!first || before.timeBox) return null;
  for (const cause of causes) {
    if (typeof cause === 'string') continue;
    if (cause.type === 'panel-off') {
      if (first.takeOff.includes(cause.panelId)) return null;
      const taken = before.digPlan.find(({ takeOff }) => takeOff.includes(cause.panelId));
      if (taken) return taken;
    }
    if (cause.type === 'inspection') {
      const looked = new Set(cause.stretches.map(({ segmentId }) => segmentId));
      const shows = ({ look }: DigStep): boolean => look.segmentIds.some((id) => looked.has(id));
      if (shows(first)) return null;
      const taken = before.digPlan.find((step) => shows(step));
      if (taken) return taken;
    }
  }
  return null;
}
