import type { BodyPoint } from './place.ts';
import { bodyDistanceMm } from './point.ts';
import { pointAtStation, type StationLine } from './station-line.ts';

/** One drawn corner as a loom would take it. */
export interface Corner {
  readonly stationMm: number;
  /** How far the line turns there, 0 straight on, pi straight back. */
  readonly turnRad: number;
  /** Radius of the arc that cuts the corner; infinite where the line does not turn. */
  readonly radiusMm: number;
}

const angleBetween = (a: BodyPoint, corner: BodyPoint, b: BodyPoint): number => {
  const inX = corner.xMm - a.xMm;
  const inY = corner.yMm - a.yMm;
  const inZ = corner.zMm - a.zMm;
  const outX = b.xMm - corner.xMm;
  const outY = b.yMm - corner.yMm;
  const outZ = b.zMm - corner.zMm;
  const crossed = Math.hypot(inY * outZ - inZ * outY, inZ * outX - inX * outZ, inX * outY - inY * outX);
  return Math.atan2(crossed, inX * outX + inY * outY + inZ * outZ);
};

/**
 * The bend radius of every inner corner of a drawn line, when the loom leaves the straight `cutMm` before
 * the corner and meets it again `cutMm` after (never beyond half a leg): a fillet touching both legs has
 * radius cut / tan(turn / 2). Plane geometry. O(points).
 * @example
 * cornersOf(stationLine([{ xMm: 0, yMm: 0, zMm: 0 }, { xMm: 100, yMm: 0, zMm: 0 }, { xMm: 100, yMm: 100, zMm: 0 }]), 40)[0].radiusMm // => 40
 */
export function cornersOf(line: StationLine, cutMm: number): readonly Corner[] {
  const corners: Corner[] = [];
  for (let i = 1; i < line.points.length - 1; i++) {
    const before = line.points[i - 1] as BodyPoint;
    const corner = line.points[i] as BodyPoint;
    const after = line.points[i + 1] as BodyPoint;
    const turnRad = angleBetween(before, corner, after);
    const cut = Math.min(cutMm, bodyDistanceMm(before, corner) / 2, bodyDistanceMm(corner, after) / 2);
    corners.push({
      stationMm: line.stationsMm[i] as number,
      turnRad,
      radiusMm: turnRad > 0 ? cut / Math.tan(turnRad / 2) : Number.POSITIVE_INFINITY,
    });
  }
  return corners;
}

/**
 * Bend radius at a station, in mm: of the circle through the line's points there and `reachMm` to either
 * side (radius = product of the sides / 4 area). Near an end the three points are taken inside the line.
 * Infinite where they lie straight. O(log points).
 * @example
 * bendRadiusMm(sample.line.spans[0].line, 250, 50) // => Infinity
 */
export function bendRadiusMm(line: StationLine, stationMm: number, reachMm: number): number {
  const reach = Math.min(reachMm, line.lengthMm / 2);
  const middle = Math.min(line.lengthMm - reach, Math.max(reach, stationMm));
  const a = pointAtStation(line, middle - reach);
  const b = pointAtStation(line, middle);
  const c = pointAtStation(line, middle + reach);
  const ab = bodyDistanceMm(a, b);
  const bc = bodyDistanceMm(b, c);
  const ac = bodyDistanceMm(a, c);
  const turnRad = angleBetween(a, b, c);
  // A straight line read back with rounding turns by less than this.
  if (turnRad < 1e-7) return Number.POSITIVE_INFINITY;
  if (ac === 0) return 0;
  const area = (ab * bc * Math.sin(turnRad)) / 2;
  return area > 0 ? (ab * bc * ac) / (4 * area) : 0;
}
