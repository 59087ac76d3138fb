import { pointAtStation } from '../geometry/station-line.ts';
import { normalTail } from '../quantity/normal-tail.ts';
import type { CauseFigures, CauseKind } from './cause.ts';
import type { Slide } from './chafe-assumptions.ts';
import type { Mechanism } from './class-split.ts';
import { footForceN } from './foot-load.ts';
import { readAt } from './mass-at.ts';
import type { MechanismHazard } from './mechanism-hazard.ts';
import type { NearSpot } from './near-spots.ts';
import { gapAfterSag, rubWorkAt, type Surface } from './rub-work.ts';
import { causeFactor, type RunContext, spanFigures } from './run-context.ts';
import { type Span, spanIndexAt } from './span.ts';
import { heightsCount, spotDistanceMm } from './spot-distance.ts';

/** Places looked at in a cell where the gap changes fast. */
const placesPerCell = 4;
/** A gap under this changes fast along the loom. */
const fineGapMm = 40;

/** What acts on a loom beside one mapped spot. */
interface SpotDrive {
  readonly cause: CauseKind;
  readonly mechanism: Mechanism;
  readonly perMm: (place: SpotPlace) => number;
}

/** One place of a loom beside a spot. */
interface SpotPlace {
  readonly span: Span;
  readonly stationMm: number;
  readonly surface: Surface;
  /** Chance that it touches when the loom hangs still. */
  readonly touching: number;
}

/**
 * Hazard of every mapped spot near a run: shaken against it, trodden on to it, or slid along it.
 * @example
 * rubSpotHazards(runContext(sample.middle, runSurroundings(sample.map, sample.middle, defaultAssumptions), defaultAssumptions)).length // => 1
 */
export function rubSpotHazards(run: RunContext): readonly MechanismHazard[] {
  return run.around.near.flatMap((near, i) => spotHazards(run, near, run.around.nearestMm[i] as number));
}

function spotHazards(run: RunContext, near: NearSpot, nearestMm: number): MechanismHazard[] {
  const { spot } = near;
  const { assumptions } = run;
  const taught =
    (assumptions.rubSpotKindFactor[spot.kind] ?? 1) * (assumptions.rubSpotFactor.get(spot.id) ?? 1);
  const severity = assumptions.edgeSeverity[spot.kind] * assumptions.severityFactor[spot.severity] * taught;
  const drives = drivesBeside(run, near);
  const windows = densities(run, near, nearestMm, drives);
  if (!windows) return [];
  const figures: CauseFigures = {
    ...spanFigures(run, windows.nearestMm),
    clearanceMm: Math.max(0, windows.gapMm),
    rubSpotKind: spot.kind,
    bundleDiameterMm: run.through.bundle.diameterMm,
    ...(spot.timesFound > 0 ? { timesFound: spot.timesFound } : {}),
  };
  return drives.map(({ cause, mechanism }, i) => {
    const raw = windows.perDrive[i] as HeldWindow;
    const factor = severity * causeFactor(run, cause);
    for (let k = 0; k < raw.perMm.length; k++) raw.perMm[k] = (raw.perMm[k] as number) * factor;
    return { cause, mechanism, thing: spot.id, figures, ...raw, placed: true };
  });
}

function drivesBeside(run: RunContext, { spot }: NearSpot): SpotDrive[] {
  const { assumptions, segment, through } = run;
  const { baseRates, foot } = assumptions;
  const moves = spot.kind === 'moving-part' || spot.kind === 'hinge';
  const movedWork = moves ? baseRates.slide * slidWork(assumptions.moving) : 0;
  const drives: SpotDrive[] = [
    {
      cause: 'rub-spot',
      mechanism: 'vibration',
      perMm: ({ span, stationMm, surface, touching }) =>
        baseRates.vibration * 3600 * rubWorkAt(span, stationMm, surface, assumptions) + movedWork * touching,
    },
  ];
  if (segment.traits.includes('under-feet')) {
    const trodden =
      baseRates.foot * foot.stepsPerHour * footForceN(foot, through.bundle.diameterMm) * foot.slideMm;
    drives.push({ cause: 'foot-load', mechanism: 'foot-load', perMm: ({ touching }) => trodden * touching });
  }
  if (segment.traits.includes('slides-with-seat')) {
    const slid = baseRates.slide * slidWork(assumptions.seat);
    drives.push({ cause: 'seat-slide', mechanism: 'seat-slide', perMm: ({ touching }) => slid * touching });
  }
  return drives;
}

/** Force times slip an hour of something that slides there and back, N mm. */
const slidWork = ({ cyclesPerHour, travelMm, forceN }: Slide) => cyclesPerHour * 2 * travelMm * forceN;

interface HeldWindow {
  readonly firstCell: number;
  readonly perMm: number[];
}

interface Densities {
  readonly perDrive: readonly HeldWindow[];
  readonly nearestMm: number;
  readonly gapMm: number;
}

/** Every drive's density in the cells within reach; null when none is. */
function densities(
  run: RunContext,
  { spot, distanceMm }: NearSpot,
  nearestMm: number,
  drives: readonly SpotDrive[],
): Densities | null {
  const { assumptions, around, cellMm, spans } = run;
  const { line } = around.shape;
  const inSpace = heightsCount(around.shape, spot);
  const given = spot.clearanceMm !== null || inSpace;
  const tauMm = given ? assumptions.clearanceSigmaMm : assumptions.planClearanceSigmaMm;
  const forceN = run.segment.traits.includes('drawn-tight') ? assumptions.tightForceN : 0;
  // From distance off the centre line to free gap.
  const offsetMm =
    spot.clearanceMm === null ? -run.through.bundle.diameterMm / 2 : spot.clearanceMm - nearestMm;
  const distanceAt = (stationMm: number) => spotDistanceMm(spot, pointAtStation(line, stationMm), inSpace);
  const reach = cellsInReach(run, distanceAt);
  if (!reach) return null;
  const { firstCell, distancesMm } = reach;
  const perDrive = drives.map(() => ({ firstCell, perMm: distancesMm.map(() => 0) }));
  let spanIndex = 0;
  for (let i = 0; i < distancesMm.length; i++) {
    const startMm = (firstCell + i) * cellMm;
    spanIndex = spanIndexAt(spans, startMm, spanIndex);
    const middleGapMm = (distancesMm[i] as number) + offsetMm;
    const places = middleGapMm < fineGapMm ? placesPerCell : 1;
    for (let k = 0; k < places; k++) {
      const stationMm = startMm + ((k + 0.5) / places) * cellMm;
      const span = spans[spanIndexAt(spans, stationMm, spanIndex)] as Span;
      const gapMm = places === 1 ? middleGapMm : distanceAt(stationMm) + offsetMm;
      const surface = { gapMm, side: spot.side, tauMm, forceN };
      const touching = normalTail(gapAfterSag(span, stationMm, surface) / tauMm);
      const place = { span, stationMm, surface, touching };
      const weight = readAt(run, run.wear, stationMm) / places;
      for (let d = 0; d < drives.length; d++) {
        const { perMm } = perDrive[d] as HeldWindow;
        const density = (drives[d] as SpotDrive).perMm(place);
        perMm[i] = (perMm[i] as number) + density * weight;
      }
    }
  }
  return { perDrive, nearestMm: reach.nearestMm, gapMm: distanceMm + offsetMm };
}

interface CellsInReach {
  readonly firstCell: number;
  /** Distance to the spot from the middle of each cell, from the first in reach to the last. */
  readonly distancesMm: readonly number[];
  readonly nearestMm: number;
}

function cellsInReach(run: RunContext, distanceAt: (stationMm: number) => number): CellsInReach | null {
  const { cellCount, cellMm, assumptions } = run;
  const distances: number[] = [];
  let firstCell = -1;
  let lastCell = -1;
  let nearestCell = 0;
  for (let cell = 0; cell < cellCount; cell++) {
    const distance = distanceAt((cell + 0.5) * cellMm);
    distances.push(distance);
    if (distance < (distances[nearestCell] as number)) nearestCell = cell;
    if (distance > assumptions.reachMm) continue;
    if (firstCell < 0) firstCell = cell;
    lastCell = cell;
  }
  if (firstCell < 0) return null;
  return {
    firstCell,
    distancesMm: distances.slice(firstCell, lastCell + 1),
    nearestMm: (nearestCell + 0.5) * cellMm,
  };
}
