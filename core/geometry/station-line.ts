import { assert } from '../quantity/assert.ts';
import type { BodyPoint } from './place.ts';
import { bodyDistanceMm } from './point.ts';

/** A drawn line with the station (arc length from its start, in mm) of every point on it. */
export interface StationLine {
  readonly points: readonly BodyPoint[];
  /** stationsMm[i] belongs to points[i]; never falls. */
  readonly stationsMm: Float64Array;
  readonly lengthMm: number;
}

/**
 * Measures a line of two or more points. O(points).
 * @example
 * stationLine([{ xMm: 0, yMm: 0, zMm: 0 }, { xMm: 3, yMm: 4, zMm: 0 }]).lengthMm // => 5
 */
export function stationLine(points: readonly BodyPoint[]): StationLine {
  assert(points.length >= 2, 'a line needs two points');
  const stationsMm = new Float64Array(points.length);
  for (let i = 1; i < points.length; i++) {
    stationsMm[i] =
      (stationsMm[i - 1] as number) + bodyDistanceMm(points[i - 1] as BodyPoint, points[i] as BodyPoint);
  }
  return {
    points,
    stationsMm,
    lengthMm: stationsMm[points.length - 1] as number,
  };
}

/**
 * Index of the piece that holds a station, and how far along it (0 to 1) the station lies.
 * @example
 * pieceAt(stationLine([{ xMm: 0, yMm: 0, zMm: 0 }, { xMm: 10, yMm: 0, zMm: 0 }]), 4) // => { piece: 0, share: 0.4 }
 */
export function pieceAt(
  line: StationLine,
  stationMm: number,
): { readonly piece: number; readonly share: number } {
  let low = 0;
  let high = line.points.length - 2;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((line.stationsMm[middle] as number) <= stationMm) low = middle;
    else high = middle - 1;
  }
  const start = line.stationsMm[low] as number;
  const length = (line.stationsMm[low + 1] as number) - start;
  const share = length > 0 ? (stationMm - start) / length : 0;
  return { piece: low, share: Math.min(1, Math.max(0, share)) };
}

/**
 * The place at a station; stations off either end give that end. O(log points).
 * @example
 * pointAtStation(stationLine([{ xMm: 0, yMm: 0, zMm: 0 }, { xMm: 10, yMm: 0, zMm: 0 }]), 4) // => { xMm: 4, yMm: 0, zMm: 0 }
 */
export function pointAtStation(line: StationLine, stationMm: number): BodyPoint {
  const { piece, share } = pieceAt(line, stationMm);
  const a = line.points[piece] as BodyPoint;
  const b = line.points[piece + 1] as BodyPoint;
  return {
    xMm: a.xMm + (b.xMm - a.xMm) * share,
    yMm: a.yMm + (b.yMm - a.yMm) * share,
    zMm: a.zMm + (b.zMm - a.zMm) * share,
  };
}
