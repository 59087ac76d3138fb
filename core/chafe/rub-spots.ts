import { boxRound, movePlace, stationsInBox } from '../geometry/along-line.ts';
import type { RubSpot } from '../map/records.ts';
import { normalTail } from '../quantity/normal-tail.ts';
import type { CauseFigures, CauseKind } from './cause.ts';
import type { ChafeAssumptions, Slide } from './chafe-assumptions.ts';
import type { Mechanism } from './class-split.ts';
import { footForceN } from './foot-load.ts';
import type { MechanismHazard } from './mechanism-hazard.ts';
import type { NearSpot } from './near-spots.ts';
import { gapAfterSag, goneWork, heldWork, type Surface } from './rub-work.ts';
import { causeFactor, type RunContext, spanFigures } from './run-context.ts';
import { type Span, type Swing, spanIndexAt } from './span.ts';
import { heightsCount, spotDistanceMm } from './spot-distance.ts';

/** A spot that adds less than this share of what the bare body beside it adds is left out there. */
const leastShare = 1e-4;
/** A gap that the step from one cell to the next cannot close. */
const clearGapMm = 25;
/** Where a clear loom moves this far, one sigma, a cell's middle shows all of it. */
const wideSigmaMm = 8;
/** Places looked at in a cell, as shares of it: its middle, the two points of Gauss and Legendre, four. */
const onePlace: readonly number[] = [0.5];
const twoPlaces: readonly number[] = [0.5 - Math.sqrt(1 / 12), 0.5 + Math.sqrt(1 / 12)];
const fourPlaces: readonly number[] = [0.125, 0.375, 0.625, 0.875];

/** What acts on a loom beside one mapped spot: so much for being shaken, so much for being touched. */
interface SpotDrive {
  readonly cause: CauseKind;
  readonly mechanism: Mechanism;
  /** Factor on the work of rubbing. */
  readonly shaken: number;
  /** Factor on the chance that it touches when the loom hangs still. */
  readonly touched: number;
}

/**
 * Hazard of every mapped spot near a run: shaken against it, trodden on to it, or slid along it.
 * @example
 * rubSpotHazards(runContext(sample.middle, runSurroundings(sample.map, sample.middle, defaultAssumptions), defaultAssumptions)).length // => 1
 */
export function rubSpotHazards(run: RunContext): readonly MechanismHazard[] {
  const { near, nearestMm } = run.around;
  const hazards: MechanismHazard[] = [];
  for (let i = 0; i < near.length; i++) {
    addSpotHazards(run, near[i] as NearSpot, nearestMm[i] as number, hazards);
  }
  return hazards;
}

/** How a run meets one spot. */
interface SpotMeeting {
  readonly spot: RubSpot;
  readonly surface: Surface;
  readonly inSpace: boolean;
  /** From distance off the centre line to free gap. */
  readonly offsetMm: number;
  /** For each span, the gap beyond which nothing is counted. */
  readonly gapsMm: readonly number[];
}

function addSpotHazards(
  run: RunContext,
  { spot, distanceMm }: NearSpot,
  nearestMm: number,
  hazards: MechanismHazard[],
): void {
  const { assumptions, around } = run;
  const inSpace = heightsCount(around.shape, spot);
  const given = spot.clearanceMm !== null || inSpace;
  const tauMm = given ? assumptions.clearanceSigmaMm : assumptions.planClearanceSigmaMm;
  const offsetMm =
    spot.clearanceMm === null ? -run.through.bundle.diameterMm / 2 : spot.clearanceMm - nearestMm;
  const mostMm = assumptions.reachMm + offsetMm;
  const gapsMm = farthestGapsMm(run, spot, tauMm).map((gapMm) => Math.min(mostMm, gapMm));
  const reachMm = Math.max(...gapsMm) - offsetMm;
  if (distanceMm > reachMm) return;
  const window = cellsWithin(run, spot, inSpace, reachMm);
  if (!window) return;
  const forceN = run.segment.traits.includes('drawn-tight') ? assumptions.tightForceN : 0;
  const surface = { gapMm: distanceMm + offsetMm, side: spot.side, tauMm, forceN };
  const drives = drivesBeside(run, spot);
  const found = densities(run, { spot, surface, inSpace, offsetMm, gapsMm }, window, drives);
  const timesFound = Math.max(spot.timesFound, assumptions.rubSpotFinds.get(spot.id) ?? 0);
  const figures: CauseFigures = {
    ...spanFigures(run, found.nearestMm),
    clearanceMm: Math.max(0, surface.gapMm),
    rubSpotKind: spot.kind,
    bundleDiameterMm: run.through.bundle.diameterMm,
    ...(timesFound > 0 ? { timesFound } : {}),
  };
  drives.forEach(({ cause, mechanism }, i) => {
    const perMm = found.perDrive[i] as number[];
    hazards.push({
      cause,
      mechanism,
      thing: spot.id,
      figures,
      firstCell: window.firstCell,
      perMm,
      placed: true,
    });
  });
}

/** For each span, the gap beyond which none of its swings, clips gone or not, brings the loom to the spot. */
function farthestGapsMm({ spans, assumptions }: RunContext, spot: RubSpot, tauMm: number): readonly number[] {
  // Chance of contact is under half of exp(-z2 / 2), that of the bare body is one half.
  const leastContact = (leastShare * assumptions.surfaceSeverity.body) / drawnSeverity(spot, assumptions);
  const sigmas = Math.sqrt(2 * Math.max(2, -Math.log(leastContact)));
  return spans.map((span) => {
    const held = swingReachMm(span, spot.side, tauMm, sigmas);
    const fromGone = span.ifFromGone ? swingReachMm(span.ifFromGone, spot.side, tauMm, sigmas) : 0;
    const toGone = span.ifToGone ? swingReachMm(span.ifToGone, spot.side, tauMm, sigmas) : 0;
    return Math.max(held, fromGone, toGone);
  });
}

function swingReachMm({ drive }: Swing, side: RubSpot['side'], tauMm: number, sigmas: number): number {
  const droopMm =
    side === 'above' ? 0 : side === 'below' ? drive.slackReachMm + drive.sagMm : drive.slackReachMm;
  return droopMm + sigmas * Math.sqrt(drive.sigmaMm * drive.sigmaMm + tauMm * tauMm);
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

interface CellWindow {
  readonly firstCell: number;
  readonly lastCell: number;
}

/** The cells whose part of the line passes within reach of the spot's box; null when none does. */
function cellsWithin(
  { around, cellMm, cellCount }: RunContext,
  spot: RubSpot,
  inSpace: boolean,
  reachMm: number,
): CellWindow | null {
  const range = stationsInBox(around.shape.line, boxRound(spot.points, reachMm, inSpace));
  if (!range) return null;
  return {
    firstCell: Math.min(cellCount - 1, Math.floor(range.fromMm / cellMm)),
    lastCell: Math.min(cellCount - 1, Math.floor(range.toMm / cellMm)),
  };
}

interface Densities {
  readonly perDrive: readonly (readonly number[])[];
  /** Station of the place looked at that lies nearest. */
  readonly nearestMm: number;
}

/** The places of a cell to look at: more of them the faster contact changes along it. */
function placesIn({ drive }: Span, gapMm: number): readonly number[] {
  if (gapMm - drive.sagMm - drive.slackReachMm <= clearGapMm) return fourPlaces;
  return drive.sigmaMm >= wideSigmaMm ? onePlace : twoPlaces;
}

/** Every drive's density in the cells of a window. */
function densities(
  run: RunContext,
  { spot, surface, inSpace, offsetMm, gapsMm }: SpotMeeting,
  { firstCell, lastCell }: CellWindow,
  drives: readonly SpotDrive[],
): Densities {
  const { assumptions, around, cellMm, spans, wear } = run;
  const perDrive = drives.map(() => new Array<number>(lastCell - firstCell + 1).fill(0));
  const touches = drives.some(({ touched }) => touched > 0);
  const place = { xMm: 0, yMm: 0, zMm: 0 };
  const { line } = around.shape;
  let piece = 0;
  let spanIndex = 0;
  let middleIndex = 0;
  let lastGapMm = 0;
  let nearestMm = firstCell * cellMm;
  let nearest = Number.POSITIVE_INFINITY;
  for (let cell = firstCell; cell <= lastCell; cell++) {
    const wearHere = wear[cell] as number;
    const wearRise = (wear[cell + 1] as number) - wearHere;
    const middleMm = (cell + 0.5) * cellMm;
    middleIndex = spanIndexAt(spans, middleMm, middleIndex);
    const inMiddle = spans[middleIndex] as Span;
    const places = placesIn(inMiddle, lastGapMm);
    const close = places === fourPlaces;
    let shaken = 0;
    let touching = 0;
    let meanGapMm = 0;
    for (const share of places) {
      const stationMm = (cell + share) * cellMm;
      piece = movePlace(place, line, stationMm, piece);
      const distanceMm = spotDistanceMm(spot, place, inSpace);
      const gapMm = distanceMm + offsetMm;
      meanGapMm += gapMm / places.length;
      if (distanceMm < nearest) {
        nearest = distanceMm;
        nearestMm = stationMm;
      }
      spanIndex = spanIndexAt(spans, stationMm, spanIndex);
      if (gapMm > (gapsMm[spanIndex] as number)) continue;
      const span = spans[spanIndex] as Span;
      const weight = (wearHere + wearRise * share) / places.length;
      shaken += heldWork(span, stationMm, gapMm, surface, assumptions) * weight;
      if (close) shaken += goneWork(span, stationMm, gapMm, surface, assumptions) * weight;
      if (touches) {
        const freeMm = gapAfterSag(span, stationMm, { gapMm, side: surface.side });
        touching += weight * normalTail(freeMm / surface.tauMm);
      }
    }
    lastGapMm = meanGapMm;
    if (meanGapMm > (gapsMm[middleIndex] as number) && shaken === 0) continue;
    // Clear of a spot, a gone clip's longer swing changes slowly: once a cell is enough.
    if (!close) {
      shaken += goneWork(inMiddle, middleMm, meanGapMm, surface, assumptions) * (wearHere + wearRise / 2);
    }
    for (let d = 0; d < drives.length; d++) {
      const each = drives[d] as SpotDrive;
      (perDrive[d] as number[])[cell - firstCell] = each.shaken * shaken + each.touched * touching;
    }
  }
  return { perDrive, nearestMm };
}
