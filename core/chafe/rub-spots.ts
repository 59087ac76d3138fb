import type { RubSpot } from '../map/records.ts';
import type { CauseFigures, CauseKind } from './cause.ts';
import type { ChafeAssumptions, Slide } from './chafe-assumptions.ts';
import type { Mechanism } from './class-split.ts';
import { footForceN } from './foot-load.ts';
import { meanContact } from './mean-contact.ts';
import type { MechanismHazard } from './mechanism-hazard.ts';
import type { NearSpot } from './near-spots.ts';
import { quickTail } from './quick-tail.ts';
import { causeFactor, type RunContext, spanFigures } from './run-context.ts';
import { cellOf, motionOf, type RunMotion, swingOf, swingsOfSpan } from './run-motion.ts';
import { placesAlong } from './run-places.ts';
import type { Span, Swing } from './span.ts';
import type { SpanDrive } from './span-drive.ts';
import { spotForm } from './spot-form.ts';
import { emptyTrail, fillTrail } from './spot-trail.ts';

/** A spot that adds less than this share of what the bare body beside it adds is left out there. */
const leastShare = 1e-3;
/** What acts on a loom beside one mapped spot: so much for being shaken, so much for being touched. */
interface SpotDrive {
  readonly cause: CauseKind;
  readonly mechanism: Mechanism;
  /** Factor on the work of rubbing. */
  readonly shaken: number;
  /** Factor on the chance that it touches when the loom hangs still. */
  readonly touched: number;
}

/** The farthest that any swing of a run comes towards a spot, on each of its sides. */
interface RunReach {
  readonly level: number;
  readonly below: number;
  readonly sigmaMm: number;
}

/** Filled anew for every meeting; nothing is kept in them. */
const trail = emptyTrail();
let spanReachMm = new Float64Array(0);

/** A swing whose motion rises over a slice by less than this share is taken to move alike all through it. */
const notableRise = 0.1;

/**
 * Hazard of every mapped spot near a run: shaken against it, trodden on to it, or slid along it.
 * @example
 * rubSpotHazards(runContext(sample.middle, runSurroundings(sample.map, sample.middle, defaultAssumptions), defaultAssumptions)).length // => 1
 */
export function rubSpotHazards(run: RunContext): readonly MechanismHazard[] {
  const { near, nearestMm } = run.around;
  const hazards: MechanismHazard[] = [];
  if (near.length === 0) return hazards;
  const most = runReach(run.spans);
  for (let i = 0; i < near.length; i++) {
    const each = near[i] as NearSpot;
    const meeting = meetingWith(run, each, nearestMm[i] as number, most);
    if (!meeting) continue;
    addSpotHazards(run, each, meeting, hazards);
  }
  return hazards;
}

function runReach(spans: readonly Span[]): RunReach {
  const most = { level: 0, below: 0, sigmaMm: 0 };
  for (const span of spans) {
    addReach(most, span);
    if (span.ifFromGone) addReach(most, span.ifFromGone);
    if (span.ifToGone) addReach(most, span.ifToGone);
  }
  return most;
}

function addReach(most: { level: number; below: number; sigmaMm: number }, { drive }: Swing): void {
  most.level = Math.max(most.level, drive.slackReachMm);
  most.below = Math.max(most.below, drive.slackReachMm + drive.sagMm);
  most.sigmaMm = Math.max(most.sigmaMm, drive.sigmaMm);
}

/** How a run meets one spot. */
interface SpotMeeting {
  readonly inSpace: boolean;
  readonly tauMm: number;
  /** From distance off the centre line to free gap. */
  readonly offsetMm: number;
  /** So many sigmas off nothing is counted. */
  readonly sigmas: number;
}

/** How a run meets a spot; null when none of its swings can come near. */
function meetingWith(
  { assumptions, through }: RunContext,
  near: NearSpot,
  nearestMm: number,
  most: RunReach,
): SpotMeeting | null {
  const { spot, inSpace } = near;
  const given = spot.clearanceMm !== null || inSpace;
  const tauMm = given ? assumptions.clearanceSigmaMm : assumptions.planClearanceSigmaMm;
  const offsetMm = spot.clearanceMm === null ? -through.bundle.diameterMm / 2 : spot.clearanceMm - nearestMm;
  const droopMm = spot.side === 'above' ? 0 : most[spot.side];
  const wideMm = Math.sqrt(most.sigmaMm * most.sigmaMm + tauMm * tauMm);
  if (near.leastMm > droopMm + mostSigmas * wideMm - offsetMm) return null;
  const sigmas = sigmasOf(spot, assumptions);
  const reachMm = Math.min(assumptions.reachMm, droopMm + sigmas * wideMm - offsetMm);
  if (near.leastMm > reachMm || near.distanceMm > reachMm) return null;
  return { inSpace, tauMm, offsetMm, sigmas };
}

/** No spot reaches farther than this: one two hundred thousand times as sharp as the body beside it. */
const mostSigmas = 6;

/** So many sigmas off a gap, the contact with a spot is the least share of that with the bare body, one half. */
function sigmasOf(spot: RubSpot, assumptions: ChafeAssumptions): number {
  const least = (leastShare * assumptions.surfaceSeverity.body) / 2 / drawnSeverity(spot, assumptions);
  // The tail of z is under bell(z) / z: twice round is near enough, and never too little.
  const farthest = Math.sqrt(2 * Math.max(2, -Math.log(least)));
  const nearer = Math.sqrt(2 * Math.max(2, -Math.log(least * farthest * 0.8 * Math.sqrt(2 * Math.PI))));
  return Math.min(mostSigmas, nearer);
}

function addSpotHazards(
  run: RunContext,
  near: NearSpot,
  meeting: SpotMeeting,
  hazards: MechanismHazard[],
): void {
  const { spot } = near;
  fillReaches(run, spot.side, meeting);
  const { cellCount, cellMm } = run;
  const places = placesAlong(run.around.shape.line, 2 * cellCount);
  const motion = motionOf(run);
  fillTrail(trail, spotForm(spot), places, cellCount, cellMm, meeting.inSpace, motion, spanReachMm);
  if (trail.count === 0) return;
  const drives = drivesBeside(run, spot);
  const found = densities(run, spot, meeting, drives);
  if (!found) return;
  const timesFound = Math.max(spot.timesFound, run.assumptions.rubSpotFinds.get(spot.id) ?? 0);
  const figures: CauseFigures = {
    ...spanFigures(run, found.nearestMm),
    clearanceMm: Math.max(0, near.distanceMm + meeting.offsetMm),
    rubSpotKind: spot.kind,
    bundleDiameterMm: run.through.bundle.diameterMm,
    ...(timesFound > 0 ? { timesFound } : {}),
  };
  drives.forEach(({ cause, mechanism }, i) => {
    const perMm = found.perDrive[i] as Float64Array;
    hazards.push({
      cause,
      mechanism,
      thing: spot.id,
      figures,
      firstCell: found.firstCell,
      perMm,
      placed: true,
    });
  });
}

/** For each span, the distance beyond which none of its swings, clips gone or not, brings the loom to the spot. */
function fillReaches({ spans, assumptions }: RunContext, side: RubSpot['side'], meeting: SpotMeeting): void {
  if (spanReachMm.length < spans.length) spanReachMm = new Float64Array(2 * spans.length);
  for (let i = 0; i < spans.length; i++) {
    let gapMm = 0;
    for (let k = 0; k < swingsOfSpan; k++) {
      const swing = swingOf(spans[i] as Span, k);
      if (swing) gapMm = Math.max(gapMm, swingReachMm(swing, side, meeting));
    }
    spanReachMm[i] = Math.min(assumptions.reachMm, gapMm - meeting.offsetMm);
  }
}

/** How far a swing may hang or stray towards a surface at mid-span, mm. */
function droopOf({ slackReachMm, sagMm }: SpanDrive, side: RubSpot['side']): number {
  return side === 'above' ? 0 : side === 'below' ? slackReachMm + sagMm : slackReachMm;
}

function swingReachMm({ drive }: Swing, side: RubSpot['side'], { tauMm, sigmas }: SpotMeeting): number {
  return droopOf(drive, side) + sigmas * Math.sqrt(drive.sigmaMm * drive.sigmaMm + tauMm * tauMm);
}

/** How fast a spot wears through a loom, by what is drawn. */
function drawnSeverity(spot: RubSpot, { edgeSeverity, severityFactor }: ChafeAssumptions): number {
  return edgeSeverity[spot.kind] * severityFactor[spot.severity];
}

function drivesBeside(run: RunContext, spot: RubSpot): readonly SpotDrive[] {
  const { assumptions, segment, through } = run;
  const { baseRates, foot, rubSpotKindFactor, rubSpotFactor } = assumptions;
  const taught = (rubSpotKindFactor[spot.kind] ?? 1) * (rubSpotFactor.get(spot.id) ?? 1);
  const severity = drawnSeverity(spot, assumptions) * taught;
  const moves = spot.kind === 'moving-part' || spot.kind === 'hinge';
  const drive = (cause: CauseKind, mechanism: Mechanism, shaken: number, touched: number): SpotDrive => {
    const factor = severity * causeFactor(run, cause);
    return { cause, mechanism, shaken: shaken * factor, touched: touched * factor };
  };
  const drives = [
    drive(
      'rub-spot',
      'vibration',
      baseRates.vibration * 3600,
      moves ? baseRates.slide * slidWork(assumptions.moving) : 0,
    ),
  ];
  if (segment.traits.includes('under-feet')) {
    const forceN = footForceN(foot, through.bundle.diameterMm);
    const trodden = baseRates.foot * foot.stepsPerHour * forceN * foot.slideMm;
    drives.push(drive('foot-load', 'foot-load', 0, trodden));
  }
  if (segment.traits.includes('slides-with-seat')) {
    drives.push(drive('seat-slide', 'seat-slide', 0, baseRates.slide * slidWork(assumptions.seat)));
  }
  return drives;
}

/** Force times slip an hour of something that slides there and back, N mm. */
const slidWork = ({ cyclesPerHour, travelMm, forceN }: Slide) => cyclesPerHour * 2 * travelMm * forceN;

interface Densities {
  readonly firstCell: number;
  readonly perDrive: readonly Float64Array[];
  /** Station of the place looked at that lies nearest. */
  readonly nearestMm: number;
}

/** Every drive's density in the cells along the trail; null when no piece of it comes near enough to count. */
function densities(
  run: RunContext,
  spot: RubSpot,
  { tauMm, offsetMm, sigmas }: SpotMeeting,
  drives: readonly SpotDrive[],
): Densities | null {
  const { assumptions, cellMm, spans } = run;
  const motion = motionOf(run);
  const forceN = run.segment.traits.includes('drawn-tight') ? assumptions.tightForceN : 0;
  const surface: Surface = { side: spot.side, tauMm, sigmas, forceN };
  const touches = drives.some(({ touched }) => touched > 0);
  const { count, slice, start, part, fromMm, toMm } = trail;
  const firstCell = cellOf(motion, slice[0] as number);
  const cellsLong = cellOf(motion, slice[count - 1] as number) - firstCell + 1;
  const perDrive = drives.map(() => new Float64Array(cellsLong));
  let nearestSlice = 0;
  let nearest = Number.POSITIVE_INFINITY;
  let counted = 0;
  let cell = firstCell;
  for (let i = 0; i < count; i++) {
    const s = slice[i] as number;
    const from = fromMm[i] as number;
    const to = toMm[i] as number;
    const offMm = (from + to) / 2;
    if (offMm < nearest) {
      nearest = offMm;
      nearestSlice = s;
    }
    const spanIndex = motion.spanOf[s] as number;
    if (offMm > (spanReachMm[spanIndex] as number)) continue;
    counted++;
    const span = spans[spanIndex] as Span;
    piece.slice = s;
    piece.start = start[i] as number;
    piece.part = part[i] as number;
    piece.fromMm = from + offsetMm;
    piece.toMm = to + offsetMm;
    const share = (piece.part * (motion.share[s] as number)) / 2;
    const shaken = share * rubbing(span, motion, piece, surface, assumptions.motionAtClip);
    const touching = touches ? share * pressing(span, motion, piece, surface) : 0;
    while ((motion.firstSlice[2 * cell + 2] as number) <= s) cell++;
    for (let d = 0; d < drives.length; d++) {
      const each = drives[d] as SpotDrive;
      const perMm = perDrive[d] as Float64Array;
      perMm[cell - firstCell] =
        (perMm[cell - firstCell] as number) + each.shaken * shaken + each.touched * touching;
    }
  }
  if (counted === 0) return null;
  return { firstCell, perDrive, nearestMm: (cellOf(motion, nearestSlice) + 0.5) * cellMm };
}

/** What a loom meets at a spot. */
interface Surface {
  readonly side: RubSpot['side'];
  readonly tauMm: number;
  /** So many sigmas off nothing is counted. */
  readonly sigmas: number;
  readonly forceN: number;
}

/** A piece of a trail, its distances turned into gaps. */
interface Piece {
  slice: number;
  start: number;
  part: number;
  fromMm: number;
  toMm: number;
}
const piece: Piece = { slice: 0, start: 0, part: 1, fromMm: 0, toMm: 0 };

/**
 * Mean over a piece of `rubWork` times wear, every swing with its chance, N mm/s per mm over the capacity.
 */
function rubbing(
  span: Span,
  { sine, sineRise, worth }: RunMotion,
  { slice, start, part, fromMm, toMm }: Piece,
  { side, tauMm, sigmas, forceN }: Surface,
  motionAtClip: number,
): number {
  const moving = 1 - motionAtClip;
  const middle = start + part / 2 - 0.5;
  let sum = 0;
  for (let k = 0; k < swingsOfSpan; k++) {
    const at = swingsOfSpan * slice + k;
    const most = worth[at] as number;
    if (most === 0) continue;
    const { drive } = swingOf(span, k) as Swing;
    const height = sine[at] as number;
    const rise = sineRise[at] as number;
    const droopMm = droopOf(drive, side);
    const nearestMm = (fromMm < toMm ? fromMm : toMm) - droopMm;
    if (nearestMm > sigmas * (drive.sigmaMm + tauMm)) continue;
    const shape = motionAtClip + moving * (height + rise * middle);
    const sigmaMm = drive.sigmaMm * shape;
    const openMm = Math.sqrt(sigmaMm * sigmaMm + tauMm * tauMm);
    if (nearestMm > sigmas * openMm) continue;
    const gapFromMm = fromMm - droopMm * (height + rise * (start - 0.5));
    const gapToMm = toMm - droopMm * (height + rise * (start + part - 0.5));
    const contact = meanContact(gapFromMm, gapToMm, openMm, tauMm);
    sum += most * contact;
    // The loom moves more on one side of the piece and touches more on one: the mean is not the product of means.
    const mostRise = (2 * most * moving * rise) / (motionAtClip + moving * height);
    if (mostRise > notableRise * most || mostRise < -notableRise * most) {
      const contactRise =
        quickTail(gapToMm / (gapToMm > 0 ? openMm : tauMm)) -
        quickTail(gapFromMm / (gapFromMm > 0 ? openMm : tauMm));
      sum += mostRise * (middle * contact + (part * contactRise) / 12);
    }
    if (forceN > 0) {
      const hungMm = droopMm * (height + rise * middle);
      const pressed = meanContact(fromMm - hungMm, toMm - hungMm, tauMm, tauMm);
      const share = most / (drive.work * shape * shape);
      sum += share * forceN * pressed * 4 * drive.hz * drive.motionMm * shape;
    }
  }
  return sum;
}

/** Mean over a piece of the wear times the chance that it touches when the loom hangs still. */
function pressing(
  span: Span,
  { sine, sineRise, wear }: RunMotion,
  { slice, start, part, fromMm, toMm }: Piece,
  { side, tauMm }: Surface,
): number {
  const droopMm = droopOf(span.drive, side);
  const height = sine[swingsOfSpan * slice] as number;
  const rise = sineRise[swingsOfSpan * slice] as number;
  const gapFromMm = fromMm - droopMm * (height + rise * (start - 0.5));
  const gapToMm = toMm - droopMm * (height + rise * (start + part - 0.5));
  return (wear[slice] as number) * meanContact(gapFromMm, gapToMm, tauMm, tauMm);
}
