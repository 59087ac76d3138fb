import { lineToAreaMm, lineToPathMm } from '../geometry/line-distance.ts';
import { bodyDistanceToPathMm, planDistanceToPathMm } from '../geometry/piece-distance.ts';
import type { BodyPoint } from '../geometry/place.ts';
import { distanceToPolygonMm } from '../geometry/polygon.ts';
import type { RubSpot } from '../map/records.ts';
import type { RunShape } from './run-shape.ts';

/**
 * Whether heights count between a run and a spot: only when both were given some. An area is always taken
 * in plan.
 * @example
 * heightsCount(runShape(sample.map, sample.middle), sample.rubSpot) // => false
 */
export function heightsCount(shape: RunShape, spot: RubSpot): boolean {
  return shape.hasHeight && spot.shape !== 'area' && spot.points.some((point) => point.zMm !== 0);
}

/**
 * Distance in mm from a place on a loom's centre line to a mapped spot, zero inside an area. O(points).
 * @example
 * spotDistanceMm(sample.rubSpot, { xMm: 747, yMm: 0, zMm: 0 }, false) // => 5
 */
export function spotDistanceMm(spot: RubSpot, place: BodyPoint, inSpace: boolean): number {
  if (spot.shape === 'area' && spot.points.length > 2) return distanceToPolygonMm(spot.points, place);
  const only = spot.points[0] as BodyPoint;
  if (spot.points.length === 1) {
    const dx = place.xMm - only.xMm;
    const dy = place.yMm - only.yMm;
    const dz = inSpace ? place.zMm - only.zMm : 0;
    return Math.sqrt(dx * dx + dy * dy + dz * dz);
  }
  return inSpace
    ? bodyDistanceToPathMm(place, spot.points, false)
    : planDistanceToPathMm(place, spot.points, false);
}

const flat = (points: readonly BodyPoint[]) => points.map((point) => ({ ...point, zMm: 0 }));

/**
 * Least distance in mm between a run's centre line and a mapped spot. O(points x points).
 * @example
 * runToSpotMm(runShape(sample.map, sample.middle), sample.rubSpot) // => 4
 */
export function runToSpotMm(shape: RunShape, spot: RubSpot): number {
  const { points } = shape.line;
  if (spot.shape === 'area' && spot.points.length > 2) return lineToAreaMm(points, spot.points);
  return heightsCount(shape, spot)
    ? lineToPathMm(points, spot.points, false)
    : lineToPathMm(flat(points), flat(spot.points), false);
}
