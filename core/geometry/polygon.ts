import { planPieceSquaredMm2 } from './nearest-on-piece.ts';
import type { PlanPoint } from './place.ts';

/**
 * Whether a closed area holds a point (even-odd rule; the half-open edge test counts a shared corner
 * once). Fewer than three corners hold nothing. O(corners).
 * @example
 * polygonContains([{ xMm: 0, yMm: 0 }, { xMm: 4, yMm: 0 }, { xMm: 0, yMm: 4 }], { xMm: 1, yMm: 1 }) // => true
 */
export function polygonContains(corners: readonly PlanPoint[], point: PlanPoint): boolean {
  if (corners.length < 3) return false;
  let inside = false;
  let previous = corners[corners.length - 1] as PlanPoint;
  for (const corner of corners) {
    if (corner.yMm > point.yMm !== previous.yMm > point.yMm) {
      const share = (point.yMm - corner.yMm) / (previous.yMm - corner.yMm);
      if (point.xMm < corner.xMm + (previous.xMm - corner.xMm) * share) inside = !inside;
    }
    previous = corner;
  }
  return inside;
}

/**
 * Distance from a point to a closed area seen in plan: zero inside, else to the nearest edge, in mm.
 * Infinite for an area without corners. O(corners).
 * @example
 * distanceToPolygonMm([{ xMm: 0, yMm: 0 }, { xMm: 4, yMm: 0 }, { xMm: 0, yMm: 4 }], { xMm: 2, yMm: -3 }) // => 3
 */
export function distanceToPolygonMm(corners: readonly PlanPoint[], point: PlanPoint): number {
  if (polygonContains(corners, point)) return 0;
  let nearest = Number.POSITIVE_INFINITY;
  let previous = corners[corners.length - 1];
  for (const corner of corners) {
    if (previous) nearest = Math.min(nearest, planPieceSquaredMm2(point, previous, corner));
    previous = corner;
  }
  return Math.sqrt(nearest);
}

/**
 * Signed area of a closed ring in square millimetres (shoelace formula); its size is what matters, its
 * sign the direction drawn.
 * @example
 * polygonAreaMm2([{ xMm: 0, yMm: 0 }, { xMm: 4, yMm: 0 }, { xMm: 4, yMm: 2 }, { xMm: 0, yMm: 2 }]) // => 8
 */
export function polygonAreaMm2(corners: readonly PlanPoint[]): number {
  let twice = 0;
  let previous = corners[corners.length - 1];
  for (const corner of corners) {
    if (previous) twice += previous.xMm * corner.yMm - corner.xMm * previous.yMm;
    previous = corner;
  }
  return twice / 2;
}
