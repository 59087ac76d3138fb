import type { HazardField } from '../chafe/hazard-field.ts';
import type { Look } from '../dig/look.ts';
import { isNearTie, openingRegrets } from '../dig/opening-regrets.ts';
import { type DigOptions, planDig } from '../dig/plan-dig.ts';
import { planWithin } from '../dig/plan-within.ts';
import type { Panel } from '../map/records.ts';
import type { PanelId } from '../quantity/id.ts';
import type { PlacedLook } from './dig-looks.ts';
import { type ChancesWithout, digSteps } from './dig-steps.ts';
import type { Ranking } from './ranking.ts';

/** What the user may wish of the plan. */
export interface DigPlanOptions extends DigOptions {
  /** Only what can be seen within so many minutes, with the best chance. */
  readonly timeBoxMinutes?: number | undefined;
  /** Pairs of panels over the same places of which either may come off: one of them is enough. */
  readonly eitherPanels?: readonly (readonly [PanelId, PanelId])[] | undefined;
  /** For so many openings, how much is lost by beginning there. */
  readonly regretSteps?: number | undefined;
}

interface DigPlanAsked extends DigPlanOptions {
  /** The chances of the looks without one piece of evidence each. */
  readonly without?: readonly ChancesWithout[];
}

/** The part of a ranking that is about opening up. */
export type DigPart = Pick<
  Ranking,
  | 'digPlan'
  | 'expectedMinutes'
  | 'lowerBoundMinutes'
  | 'expectedTotalMinutes'
  | 'chanceLeftOut'
  | 'lookOrder'
  | 'timeBox'
>;

/**
 * The plan of opening up as the user wishes it. With a time box the plan holds only what fits into it.
 * @example
 * digPlan(sample.field, [], sample.map.panels, new Set()).digPlan // => []
 */
export function digPlan(
  field: HazardField,
  looks: readonly PlacedLook[],
  panels: ReadonlyMap<PanelId, Panel>,
  off: ReadonlySet<PanelId>,
  options: DigPlanAsked = {},
): DigPart {
  const wanted = looks.map((look) => withEither(look, options.eitherPanels ?? []));
  const order = planDig(wanted, panels, off, options);
  const regrets = openingRegrets(order, options.regretSteps ?? 0);
  const aimed = options.refit ? order.expectedTotalMinutes : order.expectedMinutes;
  const box =
    options.timeBoxMinutes === undefined
      ? null
      : planWithin(wanted, panels, off, options.timeBoxMinutes, {
          notToday: options.notToday,
          comingOutAnyway: options.comingOutAnyway,
        });
  const steps = digSteps(field, (box ?? order).openings, options.without);
  return {
    digPlan: box
      ? steps
      : steps.map((step, i) => {
          const regretMinutes = regrets[i];
          if (regretMinutes === undefined) return step;
          return { ...step, regretMinutes, asGoodAsFirst: isNearTie(aimed, regretMinutes) };
        }),
    expectedMinutes: order.expectedMinutes,
    lowerBoundMinutes: order.lowerBoundMinutes,
    expectedTotalMinutes: order.expectedTotalMinutes,
    chanceLeftOut: order.leftOut.reduce((sum, { probability }) => sum + probability, 0),
    lookOrder: order.lookOrder,
    ...(box ? { timeBox: { minutes: box.minutes, seen: box.seen, mostSeen: box.mostSeen } } : {}),
  };
}

/**
 * Turns panels of which either will do into two ways in, for looks that lie under both.
 * @example
 * withEither({ id: 'a', panelIds: ['panel:seat', 'panel:tread'], probability: 1, quality: 1, minutes: 2 }, [['panel:seat', 'panel:tread']]).otherAccess // => [['panel:tread']]
 */
export function withEither<L extends Look>(look: L, pairs: readonly (readonly [PanelId, PanelId])[]): L {
  let accesses: (readonly PanelId[])[] = [look.panelIds];
  for (const [one, other] of pairs) {
    accesses = accesses.flatMap((panelIds) =>
      panelIds.includes(one) && panelIds.includes(other)
        ? [panelIds.filter((id) => id !== other), panelIds.filter((id) => id !== one)]
        : [panelIds],
    );
  }
  const [panelIds = look.panelIds, ...otherAccess] = accesses;
  return otherAccess.length === 0 ? look : { ...look, panelIds, otherAccess };
}
