import type { CauseShare } from '../chafe/cause.ts';
import { type Caution, cautions } from '../map/kinds.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { NodeId, PanelId } from '../quantity/id.ts';
import type { Job } from './job-document.ts';
import type { Ranking, StretchProbability } from './ranking.ts';

/** One opening on the sheet for the bench. */
export interface DigSheetStep {
  readonly rank: number;
  readonly takeOff: readonly { readonly panelId: PanelId; readonly minutesOff: number }[];
  readonly cautions: readonly Caution[];
  /** What is then in view, by circuit station in mm. */
  readonly parts: readonly StretchProbability[];
  readonly plugIds: readonly NodeId[];
  /** What makes the loom there likely to be worn, largest share first. */
  readonly causes: readonly CauseShare[];
  /** Looked at before on this sheet; now for what was overlooked. */
  readonly again: boolean;
  readonly minutes: number;
  readonly probability: number;
  readonly runningMinutes: number;
  readonly runningProbability: number;
}

/** One page for the bench, ticked by hand. */
export interface DigSheet {
  readonly vehicle: Job['vehicle'];
  readonly complaint: string;
  readonly steps: readonly DigSheetStep[];
  /** Openings of the plan that are not on the sheet. */
  readonly left: number;
  /** Every caution of the steps, each once. */
  readonly cautions: readonly Caution[];
}

/**
 * The first openings of the plan as a sheet for the bench; as many as one page holds in large type.
 * @example
 * digSheet(sample.map, sample.job, { digPlan: [] }, 5).steps // => []
 */
export function digSheet(
  map: MapDocument,
  job: Job,
  { digPlan }: Pick<Ranking, 'digPlan'>,
  mostSteps: number,
): DigSheet {
  const steps = digPlan.slice(0, mostSteps).map((step): DigSheetStep => {
    const panels = step.takeOff.flatMap((id) => map.panels.get(id) ?? []);
    return {
      rank: step.rank,
      takeOff: panels.map(({ id, minutesOff }) => ({ panelId: id, minutesOff })),
      cautions: inOrder(panels.flatMap((panel) => panel.cautions)),
      parts: step.look.parts,
      plugIds: step.look.nodeIds ?? [],
      causes: step.reason.causes,
      again: step.reason.secondLook ?? false,
      minutes: step.minutes,
      probability: step.probability,
      runningMinutes: step.runningMinutes,
      runningProbability: step.runningProbability,
    };
  });
  return {
    vehicle: job.vehicle,
    complaint: job.complaint,
    steps,
    left: digPlan.length - steps.length,
    cautions: inOrder(steps.flatMap((step) => step.cautions)),
  };
}

function inOrder(given: readonly Caution[]): readonly Caution[] {
  return cautions.filter((caution) => given.includes(caution));
}
