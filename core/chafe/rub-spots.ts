import type { RubSpot } from '../map/records.ts';
import type { CauseFigures } from './cause.ts';
import type { ChafeAssumptions, Slide } from './chafe-assumptions.ts';
import { footForceN } from './foot-load.ts';
import type { HazardSums } from './hazard-sums.ts';
import type { NearSpot } from './near-spots.ts';
import { causeFactor, type RunContext, spanFigures } from './run-context.ts';
import { motionOf } from './run-motion.ts';
import { drawnSeverity, runReach, type SpotMeeting, spotMeeting } from './spot-meeting.ts';
import { fillReaches, spotRubbing, spotTouching } from './spot-rubbing.ts';
import { emptyTrail, fillTrail } from './spot-trail.ts';
import { nearestCell, type SpotWay } from './spot-way.ts';

/** Filled anew for every meeting; nothing is kept in it. */
const trail = emptyTrail();

/**
 * Hazard of every mapped spot near a run: shaken against it, trodden on to it, or slid along it.
 * @example
 * listedCauses(runContext(sample.middle, runSurroundings(sample.map, sample.middle, defaultAssumptions), defaultAssumptions), [rubSpots]).length // => 1
 */
export function rubSpots(run: RunContext, sums: HazardSums): void {
  const { near, nearestMm } = run.around;
  if (near.length === 0) return;
  const most = runReach(run.spans);
  for (let i = 0; i < near.length; i++) {
    const each = near[i] as NearSpot;
    const meeting = spotMeeting(run, each, nearestMm[i] as number, most);
    if (meeting) addSpot(run, each, meeting, sums);
  }
}

function addSpot(run: RunContext, near: NearSpot, meeting: SpotMeeting, sums: HazardSums): void {
  const { spot } = near;
  const { cellCount, assumptions, segment, through } = run;
  const { baseRates, foot, moving, seat } = assumptions;
  const motion = motionOf(run);
  const reachMm = fillReaches(run, motion.swings, spot.side, meeting);
  const way = near.wayWithin(farthest(reachMm, run.spans.length), cellCount);
  fillTrail(trail, way, motion, reachMm);
  if (trail.count === 0) return;
  const figures = () => spotFigures(run, near, meeting, way);
  const head = { thing: spot.id, placed: true, figures };
  const severity = drawnSeverity(spot, assumptions) * taughtFactor(spot, assumptions);
  const forceN = segment.traits.includes('drawn-tight') ? assumptions.tightForceN : 0;
  const rubbed = spotRubbing(trail, motion, meeting, forceN, assumptions.motionAtClip);
  const cells = sums.cellsOf({ ...head, cause: 'rub-spot', mechanism: 'vibration' });
  const rubFactor = severity * causeFactor(run, 'rub-spot');
  addAlong(cells, rubbed, baseRates.vibration * 3600 * rubFactor);
  const moves = spot.kind === 'moving-part' || spot.kind === 'hinge';
  const trodden = segment.traits.includes('under-feet');
  const slides = segment.traits.includes('slides-with-seat');
  if (!moves && !trodden && !slides) return;
  const touched = spotTouching(trail, motion, meeting);
  if (moves) addAlong(cells, touched, baseRates.slide * slidWork(moving) * rubFactor);
  if (trodden) {
    const work = foot.stepsPerHour * footForceN(foot, through.bundle.diameterMm) * foot.slideMm;
    const factor = baseRates.foot * work * severity * causeFactor(run, 'foot-load');
    addAlong(sums.cellsOf({ ...head, cause: 'foot-load', mechanism: 'foot-load' }), touched, factor);
  }
  if (slides) {
    const factor = baseRates.slide * slidWork(seat) * severity * causeFactor(run, 'seat-slide');
    addAlong(sums.cellsOf({ ...head, cause: 'seat-slide', mechanism: 'seat-slide' }), touched, factor);
  }
}

/** Adds so much of a figure in the cells along the trail. */
function addAlong(cells: Float64Array, figure: Float64Array, factor: number): void {
  const end = trail.cell[trail.count - 1] as number;
  for (let cell = trail.cell[0] as number; cell <= end; cell++) {
    cells[cell] = (cells[cell] as number) + factor * (figure[cell] as number);
  }
}

/** What past jobs taught of a spot and its kind. */
function taughtFactor(spot: RubSpot, { rubSpotKindFactor, rubSpotFactor }: ChafeAssumptions): number {
  return (rubSpotKindFactor[spot.kind] ?? 1) * (rubSpotFactor.get(spot.id) ?? 1);
}

function farthest(reachMm: Float64Array, count: number): number {
  let most = 0;
  for (let i = 0; i < count; i++) most = Math.max(most, reachMm[i] as number);
  return most;
}

/** What a sentence about a spot may need, the span being the one that comes nearest. */
function spotFigures(
  run: RunContext,
  { spot, distanceMm }: NearSpot,
  { offsetMm }: SpotMeeting,
  way: SpotWay,
): CauseFigures {
  const timesFound = Math.max(spot.timesFound, run.assumptions.rubSpotFinds.get(spot.id) ?? 0);
  return {
    ...spanFigures(run, (nearestCell(way) + 0.5) * run.cellMm),
    clearanceMm: Math.max(0, distanceMm + offsetMm),
    rubSpotKind: spot.kind,
    bundleDiameterMm: run.through.bundle.diameterMm,
    ...(timesFound > 0 ? { timesFound } : {}),
  };
}

/** Force times slip an hour of something that slides there and back, N mm. */
const slidWork = ({ cyclesPerHour, travelMm, forceN }: Slide) => cyclesPerHour * 2 * travelMm * forceN;
