import type { BodyPoint, PlanPoint } from './place.ts';

/**
 * Straight distance between two places in the car, height included, in mm.
 * @example
 * bodyDistanceMm({ xMm: 0, yMm: 0, zMm: 0 }, { xMm: 2, yMm: 3, zMm: 6 }) // => 7
 */
export function bodyDistanceMm(a: BodyPoint, b: BodyPoint): number {
  return Math.hypot(b.xMm - a.xMm, b.yMm - a.yMm, b.zMm - a.zMm);
}

/**
 * Distance between two places on the plan view, in mm.
 * @example
 * planDistanceMm({ xMm: 0, yMm: 0 }, { xMm: 3, yMm: 4 }) // => 5
 */
export function planDistanceMm(a: PlanPoint, b: PlanPoint): number {
  return Math.hypot(b.xMm - a.xMm, b.yMm - a.yMm);
}
