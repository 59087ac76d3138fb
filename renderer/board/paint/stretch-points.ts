import type { BodyPoint } from '#core/geometry/place.ts';
import { pieceAt, pointAtStation, type StationLine } from '#core/geometry/station-line.ts';

/** The part of a measured line between two stations, its ends included. */
export function stretchPoints(line: StationLine, fromMm: number, toMm: number): readonly BodyPoint[] {
  const first = pieceAt(line, fromMm).piece;
  const last = pieceAt(line, toMm).piece;
  return [
    pointAtStation(line, fromMm),
    ...line.points.slice(first + 1, last + 1),
    pointAtStation(line, toMm),
  ];
}

/** Where a station lies on the line and which way the line runs there, as a unit vector on the plan. */
export function directionAt(
  line: StationLine,
  stationMm: number,
): { readonly at: BodyPoint; readonly dx: number; readonly dy: number } {
  const { piece } = pieceAt(line, stationMm);
  const a = line.points[piece] as BodyPoint;
  const b = line.points[piece + 1] as BodyPoint;
  const length = Math.hypot(b.xMm - a.xMm, b.yMm - a.yMm) || 1;
  return {
    at: pointAtStation(line, stationMm),
    dx: (b.xMm - a.xMm) / length,
    dy: (b.yMm - a.yMm) / length,
  };
}
