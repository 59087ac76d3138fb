import type { BodyPoint, PlanPoint } from './place.ts';

/**
 * Straight distance between two places in the car, height included, in mm.
 * @example
 * bodyDistanceMm({ xMm: 0, yMm: 0, zMm: 0 }, { xMm: 2, yMm: 3, zMm: 6 }) // => 7
 */
export function bodyDistanceMm(a: BodyPoint, b: BodyPoint): number {
  const dx = b.xMm - a.xMm;
  const dy = b.yMm - a.yMm;
  const dz = b.zMm - a.zMm;
  return Math.sqrt(dx * dx + dy * dy + dz * dz);
}

/**
 * Distance between two places on the plan view, in mm.
 * @example
 * planDistanceMm({ xMm: 0, yMm: 0 }, { xMm: 3, yMm: 4 }) // => 5
 */
export function planDistanceMm(a: PlanPoint, b: PlanPoint): number {
  const dx = b.xMm - a.xMm;
  const dy = b.yMm - a.yMm;
  return Math.sqrt(dx * dx + dy * dy);
}
