import { nearestOnBodyPiece, nearestOnPlanPiece } from './nearest-on-piece.ts';
import type { BodyPoint, PlanPoint } from './place.ts';
import type { StationLine } from './station-line.ts';

/** Where along a line a place is nearest to it. */
export interface NearestStation {
  readonly stationMm: number;
  readonly distanceMm: number;
  /** The straight piece it lies on: from points[piece] to points[piece + 1]. */
  readonly piece: number;
}

/** Distances closer than this are a tie, decided by the hint: rounding of coordinates a few metres out. */
const tieMm = 1e-9;

function nearest(
  line: StationLine,
  pieceNearest: (piece: number) => { readonly share: number; readonly distanceMm: number },
  hintMm: number,
): NearestStation {
  let best: NearestStation = { stationMm: 0, distanceMm: Number.POSITIVE_INFINITY, piece: 0 };
  for (let piece = 0; piece < line.points.length - 1; piece++) {
    const { share, distanceMm } = pieceNearest(piece);
    const start = line.stationsMm[piece] as number;
    const stationMm = start + ((line.stationsMm[piece + 1] as number) - start) * share;
    const closer = distanceMm < best.distanceMm - tieMm;
    const tie = !closer && distanceMm <= best.distanceMm + tieMm;
    if (closer || (tie && Math.abs(stationMm - hintMm) < Math.abs(best.stationMm - hintMm))) {
      best = { stationMm, distanceMm, piece };
    }
  }
  return best;
}

/**
 * The station of a line nearest to a place seen in plan, and how far off it lies in plan. Where the line
 * passes equally near twice, the station nearer to `hintMm` wins. O(points).
 * @example
 * nearestStation(sample.line.spans[0].line, { xMm: 120, yMm: 30 }) // => { stationMm: 120, distanceMm: 30, piece: 0 }
 */
export function nearestStation(line: StationLine, point: PlanPoint, hintMm = 0): NearestStation {
  return nearest(
    line,
    (piece) =>
      nearestOnPlanPiece(point, line.points[piece] as BodyPoint, line.points[piece + 1] as BodyPoint),
    hintMm,
  );
}

/**
 * The station of a line nearest to a place in the car, heights included. O(points).
 * @example
 * nearestBodyStation(sample.line.spans[0].line, { xMm: 120, yMm: 30, zMm: 40 }).distanceMm // => 50
 */
export function nearestBodyStation(line: StationLine, point: BodyPoint, hintMm = 0): NearestStation {
  return nearest(
    line,
    (piece) =>
      nearestOnBodyPiece(point, line.points[piece] as BodyPoint, line.points[piece + 1] as BodyPoint),
    hintMm,
  );
}
