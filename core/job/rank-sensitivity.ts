import type { ChafeAssumptions } from '../chafe/chafe-assumptions.ts';
import type { HazardField } from '../chafe/hazard-field.ts';
import { drawnAssumptions } from '../chafe/uncertain-constants.ts';
import { type DigOpening, planDig } from '../dig/plan-dig.ts';
import { planWithin } from '../dig/plan-within.ts';
import type { History } from '../history/teach.ts';
import { cumulate } from '../locate/cumulative.ts';
import { addEvidence, weighEvidence } from '../locate/weigh-evidence.ts';
import type { MapDocument } from '../map/map-document.ts';
import { seededChance } from '../quantity/chance.ts';
import { compareText } from '../quantity/compare-text.ts';
import type { PanelId, SegmentId } from '../quantity/id.ts';
import { ok, type Result } from '../quantity/result.ts';
import { digLooks, type PlacedLook } from './dig-looks.ts';
import { withEither } from './dig-plan.ts';
import type { Job } from './job-document.ts';
import { jobHazard } from './job-hazard.ts';
import { pathStretches } from './path-stretches.ts';
import { planWishes } from './plan-wishes.ts';
import { searchedLine, usedHistory } from './rank.ts';
import { panelsOff } from './standing-entries.ts';
import { summarisePosterior } from './summarise-posterior.ts';
import { weighedJob } from './weighed-job.ts';

/** An opening as people tell it from another: what comes off, or where one looks when nothing does. */
export interface NamedOpening {
  readonly takeOff: readonly PanelId[];
  readonly segmentIds: readonly SegmentId[];
  /** Share of the draws in which it stands at this place of the order. */
  readonly share: number;
}

/** How sure one place in the order is when the constants of judgement may be off. */
export interface OpeningFirmness {
  readonly rank: number;
  /** `firm`; `either` of the two that follow; or `unsettled` among more than two. */
  readonly standing: 'firm' | 'either' | 'unsettled';
  readonly opening: NamedOpening;
  /** The other opening that stands here most often; null when none ever does. */
  readonly rival: NamedOpening | null;
}

export interface SensitivityOptions {
  readonly seed?: number;
  readonly history?: History | null;
  readonly lookQuality?: number;
}

/** In so many draws of a hundred the same opening, or one of two, must stand there. Judgement. */
const firmShare = 0.8;
/** Draws after which shares no longer move by more than a few percent. */
export const usualDraws = 200;
const mostOpenings = 3;
/** Sets of work split up per draw: the first openings need no proof. */
const quickStates = 12;

/** Draws in the making, so that a worker may stop between them to hear what came meanwhile. */
export interface SensitivityUnderWay {
  /** Draws the constants so many times more. */
  readonly draw: (count: number) => void;
  /** What the draws made until now say. */
  readonly soFar: () => readonly OpeningFirmness[];
}

/**
 * Whether the first three openings hold when every uncertain constant is drawn anew within its stated spread
 * (`uncertainConstants`), evidence and wishes for the plan staying as they are. The same seed gives the same
 * answer. For a worker: some milliseconds a draw. Refuses what `rank` refuses.
 * @example
 * rankSensitivity(sample.map, sample.job, { draws: 20, seed: 1 }).value.length // => 3
 */
export function rankSensitivity(
  map: MapDocument,
  job: Job,
  { draws = usualDraws, ...options }: SensitivityOptions & { readonly draws?: number } = {},
): Result<readonly OpeningFirmness[]> {
  const begun = beginSensitivity(map, job, options);
  if (!begun.ok) return begun;
  begun.value.draw(draws);
  return ok(begun.value.soFar());
}

/**
 * The same in as many steps as one likes. Where there are only so many minutes for looking, it is the order of
 * what is chosen to fit into them, chosen anew in each draw.
 * @example
 * beginSensitivity(sample.map, sample.job).value.soFar().length // => 3
 */
export function beginSensitivity(
  map: MapDocument,
  job: Job,
  { seed = 1, history = null, lookQuality }: SensitivityOptions = {},
): Result<SensitivityUnderWay> {
  const line = searchedLine(map, job);
  if (!line.ok) return line;
  const used = usedHistory(job, history);
  const fieldOf = (assumptions?: ChafeAssumptions) => jobHazard(map, line.value, job, used, assumptions);
  const usual = fieldOf();
  const weighed = weighedJob(map, line.value, usual.cellEdgesMm, job);
  const { hypotheses, parts, evidence, entries } = weighed;
  const said = addEvidence(hypotheses, new Float64Array(hypotheses.size), evidence);
  const stretches = pathStretches(line.value);
  const off = panelsOff(entries);
  const { notToday, comingOutAnyway, eitherPanels, timeBoxMinutes } = planWishes(entries);
  const wishes = { notToday, comingOutAnyway, stateLimit: quickStates };
  const firstOpenings = (field: HazardField): readonly DigOpening<PlacedLook>[] => {
    const probability = weighEvidence(hypotheses, weighed.priorOf(field), [() => said]);
    const posterior = summarisePosterior(hypotheses, probability, stretches);
    const curve = cumulate(posterior.cellEdgesMm, posterior.cellProbability);
    const looks = digLooks(map, stretches, posterior, curve, parts, lookQuality).map((look) =>
      withEither(look, eitherPanels),
    );
    const plan =
      timeBoxMinutes === undefined
        ? planDig(looks, map.panels, off, wishes)
        : planWithin(looks, map.panels, off, timeBoxMinutes, wishes);
    return plan.openings.slice(0, mostOpenings);
  };
  const chance = seededChance(seed);
  const first = firstOpenings(usual);
  const tallies = first.map(() => new Map<string, Counted>());
  let drawn = 0;
  return ok({
    draw(count) {
      for (let i = 0; i < count; i++) {
        const openings = firstOpenings(fieldOf(drawnAssumptions(chance)));
        tallies.forEach((tally, at) => {
          const opening = openings[at];
          if (opening) countIn(tally, opening);
        });
      }
      drawn += count;
    },
    soFar: () =>
      first.map((opening, i) => firmness(i + 1, opening, tallies[i] as Map<string, Counted>, drawn)),
  });
}

interface Counted {
  readonly opening: DigOpening<PlacedLook>;
  count: number;
}

function countIn(tally: Map<string, Counted>, opening: DigOpening<PlacedLook>): void {
  const name = nameOf(opening);
  const held = tally.get(name);
  if (held) held.count++;
  else tally.set(name, { opening, count: 1 });
}

const runsOf = ({ looks }: DigOpening<PlacedLook>) =>
  [...new Set(looks.map(({ segmentId }) => segmentId))].sort(compareText);

function nameOf(opening: DigOpening<PlacedLook>): string {
  return opening.takeOff.length > 0
    ? [...opening.takeOff].sort(compareText).join(' ')
    : runsOf(opening).join(' ');
}

function firmness(
  rank: number,
  opening: DigOpening<PlacedLook>,
  tally: ReadonlyMap<string, Counted>,
  draws: number,
): OpeningFirmness {
  const own = nameOf(opening);
  const named = (each: DigOpening<PlacedLook>, count: number): NamedOpening => ({
    takeOff: each.takeOff,
    segmentIds: runsOf(each),
    share: draws > 0 ? count / draws : 1,
  });
  const here = named(opening, tally.get(own)?.count ?? 0);
  let rival: NamedOpening | null = null;
  for (const [name, counted] of [...tally].sort(([a], [b]) => compareText(a, b))) {
    if (name === own || (rival && counted.count / draws <= rival.share)) continue;
    rival = named(counted.opening, counted.count);
  }
  const standing =
    here.share >= firmShare ? 'firm' : here.share + (rival?.share ?? 0) >= firmShare ? 'either' : 'unsettled';
  return { rank, standing, opening: here, rival };
}
