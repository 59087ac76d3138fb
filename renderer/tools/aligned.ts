import type { PlanPoint } from '#core/geometry/place.ts';

const stepRad = Math.PI / 4;

/** The point at the same distance from `from` on the nearest of the eight directions. */
export function aligned(from: PlanPoint, to: PlanPoint): PlanPoint {
  const distanceMm = Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm);
  const angle = Math.round(Math.atan2(to.yMm - from.yMm, to.xMm - from.xMm) / stepRad) * stepRad;
  // Sines of right angles carry a rounding error that would leave a line a hair off straight.
  const round = (mm: number): number => Math.round(mm * 1e6) / 1e6;
  return {
    xMm: round(from.xMm + Math.cos(angle) * distanceMm),
    yMm: round(from.yMm + Math.sin(angle) * distanceMm),
  };
}
