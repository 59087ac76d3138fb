import { pointAtStation } from '../geometry/station-line.ts';
import { normalTail } from '../quantity/normal-tail.ts';
import type { CauseFigures, CauseKind } from './cause.ts';
import type { Slide } from './chafe-assumptions.ts';
import type { Mechanism } from './class-split.ts';
import { footForceN } from './foot-load.ts';
import type { MechanismHazard } from './mechanism-hazard.ts';
import type { NearSpot } from './near-spots.ts';
import { rubWork, spanSine } from './rub-work.ts';
import { causeFactor, type RunContext, type Span, spanFigures, spanIndexAt } from './run-context.ts';
import { type CellWindow, smoothCells } from './smooth-cells.ts';
import { heightsCount, spotDistanceMm } from './spot-distance.ts';

/** Places looked at in a cell where the gap changes fast. */
const placesPerCell = 4;
/** Beyond this many sigmas of motion and doubt nothing touches: a tail of 1e-9. */
const farthestSigmas = 6;

/** What acts on a loom beside one mapped spot. */
interface SpotDrive {
  readonly cause: CauseKind;
  readonly mechanism: Mechanism;
  readonly perMm: (place: SpotPlace) => number;
}

/** One place of a loom beside a spot. */
interface SpotPlace {
  readonly span: Span;
  readonly sine: number;
  readonly clearanceMm: number;
  readonly tauMm: number;
}

/**
 * Hazard of every mapped spot near a run: shaken against it, trodden on to it, or slid along it. Spread by
 * the doubt of where it is drawn.
 * @example
 * rubSpotHazards(runContext(sample.map, sample.middle, defaultAssumptions)).length // => 1
 */
export function rubSpotHazards(run: RunContext): readonly MechanismHazard[] {
  return run.near.flatMap((near) => spotHazards(run, near));
}

function spotHazards(run: RunContext, near: NearSpot): MechanismHazard[] {
  const { spot } = near;
  const { assumptions } = run;
  const taught =
    (assumptions.rubSpotKindFactor[spot.kind] ?? 1) * (assumptions.rubSpotFactor.get(spot.id) ?? 1);
  const severity = assumptions.edgeSeverity[spot.kind] * assumptions.severityFactor[spot.severity] * taught;
  const drives = drivesBeside(run, near);
  const windows = densities(run, near, drives);
  if (!windows) return [];
  const figures: CauseFigures = {
    ...spanFigures(run, windows.nearestMm),
    clearanceMm: Math.max(0, windows.gapMm),
    rubSpotKind: spot.kind,
    bundleDiameterMm: run.through.bundle.diameterMm,
    ...(spot.timesFound > 0 ? { timesFound: spot.timesFound } : {}),
  };
  return drives.map(({ cause, mechanism }, i) => {
    const raw = windows.perDrive[i] as CellWindow;
    const factor = severity * causeFactor(run, cause);
    for (let k = 0; k < raw.perMm.length; k++) raw.perMm[k] = (raw.perMm[k] as number) * factor;
    return { cause, mechanism, thing: spot.id, figures, ...smoothCells(raw, run.bell, run.cellCount) };
  });
}

function drivesBeside(run: RunContext, { spot }: NearSpot): SpotDrive[] {
  const { assumptions, segment, through } = run;
  const { baseRates, motionAtClip, tightForceN, foot } = assumptions;
  const forceN = segment.traits.includes('drawn-tight') ? tightForceN : 0;
  const touching = ({ clearanceMm, tauMm }: SpotPlace) => normalTail(clearanceMm / tauMm);
  const moves = spot.kind === 'moving-part' || spot.kind === 'hinge';
  const movedWork = moves ? baseRates.slide * slidWork(assumptions.moving) : 0;
  const drives: SpotDrive[] = [
    {
      cause: 'rub-spot',
      mechanism: 'vibration',
      perMm: (place) => {
        const shape = motionAtClip + (1 - motionAtClip) * place.sine;
        const work = rubWork(place.span.drive, { ...place, shape, forceN });
        return baseRates.vibration * 3600 * work + movedWork * touching(place);
      },
    },
  ];
  if (segment.traits.includes('under-feet')) {
    const trodden =
      baseRates.foot * foot.stepsPerHour * footForceN(foot, through.bundle.diameterMm) * foot.slideMm;
    drives.push({ cause: 'foot-load', mechanism: 'foot-load', perMm: (place) => trodden * touching(place) });
  }
  if (segment.traits.includes('slides-with-seat')) {
    const slid = baseRates.slide * slidWork(assumptions.seat);
    drives.push({ cause: 'seat-slide', mechanism: 'seat-slide', perMm: (place) => slid * touching(place) });
  }
  return drives;
}

/** Force times slip an hour of something that slides there and back, N mm. */
const slidWork = ({ cyclesPerHour, travelMm, forceN }: Slide) => cyclesPerHour * 2 * travelMm * forceN;

interface Densities {
  readonly perDrive: readonly CellWindow[];
  readonly nearestMm: number;
  readonly gapMm: number;
}

function densities(run: RunContext, near: NearSpot, drives: readonly SpotDrive[]): Densities | null {
  const { spot } = near;
  const { assumptions, shape, cellMm, cellCount } = run;
  const inSpace = heightsCount(shape, spot);
  const tauMm =
    spot.clearanceMm !== null || inSpace ? assumptions.clearanceSigmaMm : assumptions.planClearanceSigmaMm;
  const radiusMm = run.through.bundle.diameterMm / 2;
  const offset =
    spot.clearanceMm === null
      ? -radiusMm
      : spot.clearanceMm - (run.nearestRunMm.get(spot.id) ?? near.distanceMm);
  const distances = new Float64Array(cellCount);
  let first = -1;
  let last = -1;
  let nearestCell = 0;
  for (let cell = 0; cell < cellCount; cell++) {
    const distance = spotDistanceMm(spot, pointAtStation(shape.line, (cell + 0.5) * cellMm), inSpace);
    distances[cell] = distance;
    if (distance < (distances[nearestCell] as number)) nearestCell = cell;
    if (distance > assumptions.reachMm) continue;
    if (first < 0) first = cell;
    last = cell;
  }
  if (first < 0) return null;
  const perDrive = drives.map(() => ({ firstCell: first, perMm: new Float64Array(last - first + 1) }));
  let spanIndex = spanIndexAt(run.spans, first * cellMm);
  for (let cell = first; cell <= last; cell++) {
    const middleMm = (cell + 0.5) * cellMm;
    const wear = run.wear[cell] as number;
    while (spanIndex < run.spans.length - 1 && (run.spans[spanIndex] as Span).toMm <= cell * cellMm)
      spanIndex++;
    const { drive } = run.spans[spanIndex] as Span;
    const lowest = (distances[cell] as number) + offset - cellMm - drive.slackReachMm - drive.sagMm;
    if (lowest > farthestSigmas * Math.hypot(drive.sigmaMm, tauMm)) continue;
    const places = lowest < 30 ? placesPerCell : 1;
    for (let k = 0; k < places; k++) {
      const stationMm = (cell + (k + 0.5) / places) * cellMm;
      const span = run.spans[spanIndexFrom(run.spans, spanIndex, stationMm)] as Span;
      const distance =
        places === 1 || stationMm === middleMm
          ? (distances[cell] as number)
          : spotDistanceMm(spot, pointAtStation(shape.line, stationMm), inSpace);
      const sine = spanSine(span, stationMm);
      const droop =
        spot.side === 'below'
          ? span.drive.slackReachMm + span.drive.sagMm
          : spot.side === 'level'
            ? span.drive.slackReachMm
            : 0;
      const place = { span, sine, clearanceMm: distance + offset - droop * sine, tauMm };
      drives.forEach(({ perMm }, i) => {
        const window = (perDrive[i] as { perMm: Float64Array }).perMm;
        window[cell - first] = (window[cell - first] as number) + (perMm(place) * wear) / places;
      });
    }
  }
  return {
    perDrive,
    nearestMm: (nearestCell + 0.5) * cellMm,
    gapMm: near.distanceMm + offset,
  };
}

function spanIndexFrom(spans: readonly Span[], start: number, stationMm: number): number {
  let index = start;
  while (index < spans.length - 1 && (spans[index] as Span).toMm <= stationMm) index++;
  return index;
}
