import { contactShare } from '#core/chafe/contact.ts';
import type { NearSpot } from '#core/chafe/near-spots.ts';
import type { RunContext } from '#core/chafe/run-context.ts';
import type { Span, Swing } from '#core/chafe/span.ts';
import { heightsCount, spotDistanceMm } from '#core/chafe/spot-distance.ts';
import { pointAtStation } from '#core/geometry/station-line.ts';
import type { RubSpot } from '#core/map/records.ts';
import { normalTail } from '#core/quantity/normal-tail.ts';

/**
 * The rubbing of a run on a spot and on the bare body as the formulas say it, place by place in steps of a
 * fraction of a millimetre, nothing left out and nothing read from a table: what the quick way is held against.
 */
export const placesInCell = 24;

/** How a loom meets a surface, whatever its shape: its side, how well the gap is known, and what presses. */
interface SlowSurface {
  readonly side: RubSpot['side'];
  readonly tauMm: number;
  readonly forceN: number;
}

function swung({ fromMm, drive }: Swing, stationMm: number, gapMm: number, at: SlowSurface, atClip: number) {
  const sine = Math.max(0, Math.sin((Math.PI * (stationMm - fromMm)) / drive.spanMm));
  const shape = atClip + (1 - atClip) * sine;
  const slackMm = at.side === 'above' ? 0 : drive.slackReachMm * sine;
  const sagMm = at.side === 'below' ? drive.sagMm * sine : 0;
  const clearanceMm = gapMm - slackMm - sagMm;
  const shaken = drive.work * shape ** 2 * contactShare(clearanceMm, drive.sigmaMm * shape, at.tauMm);
  return shaken + at.forceN * normalTail(clearanceMm / at.tauMm) * 4 * drive.hz * drive.motionMm * shape;
}

/** Work at a station, a clip at either end being gone with a small chance. */
function workAt(run: RunContext, stationMm: number, gapMm: number, at: SlowSurface): number {
  const { spans, assumptions } = run;
  const span = spans.find(({ toMm }) => toMm > stationMm) ?? (spans[spans.length - 1] as Span);
  const { clipGoneShare, motionAtClip } = assumptions;
  const held = swung(span, stationMm, gapMm, at, motionAtClip);
  const gone = (swing: Swing | null) => (swing ? swung(swing, stationMm, gapMm, at, motionAtClip) : held);
  const mixed = (gone(span.ifFromGone) + gone(span.ifToGone)) / 2;
  return (1 - clipGoneShare) * held + clipGoneShare * mixed;
}

/** Rubbing against one mapped spot: work times wear, mean over each cell, per mm. No factors. */
export function slowSpotRubbing(run: RunContext, near: NearSpot, nearestMm: number): Float64Array {
  const { spot } = near;
  const { shape } = run.around;
  const inSpace = heightsCount(shape, spot);
  const offsetMm =
    spot.clearanceMm === null ? -run.through.bundle.diameterMm / 2 : spot.clearanceMm - nearestMm;
  const { clearanceSigmaMm, planClearanceSigmaMm, tightForceN, reachMm } = run.assumptions;
  const surface = {
    side: spot.side,
    tauMm: spot.clearanceMm !== null || inSpace ? clearanceSigmaMm : planClearanceSigmaMm,
    forceN: run.segment.traits.includes('drawn-tight') ? tightForceN : 0,
  };
  return overCells(run, (stationMm) => {
    const distanceMm = spotDistanceMm(spot, pointAtStation(shape.line, stationMm), inSpace);
    return distanceMm > reachMm ? 0 : workAt(run, stationMm, distanceMm + offsetMm, surface);
  });
}

/** Rubbing on the body beside the loom. */
export function slowBodyRubbing(run: RunContext): Float64Array {
  const forceN = run.segment.traits.includes('drawn-tight') ? run.assumptions.tightForceN : 0;
  const surface = { side: 'level', tauMm: run.assumptions.clearanceSigmaMm, forceN } as const;
  return overCells(run, (stationMm) => workAt(run, stationMm, 0, surface));
}

function overCells(run: RunContext, rubbing: (stationMm: number) => number): Float64Array {
  return Float64Array.from({ length: run.cellCount }, (_, cell) => {
    const wearHere = run.wear[cell] as number;
    const rise = (run.wear[cell + 1] as number) - wearHere;
    let sum = 0;
    for (let k = 0; k < placesInCell; k++) {
      const share = (k + 0.5) / placesInCell;
      sum += rubbing((cell + share) * run.cellMm) * (wearHere + rise * share);
    }
    return sum / placesInCell;
  });
}
