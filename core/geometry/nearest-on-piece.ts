import type { BodyPoint, PlanPoint } from './place.ts';
import { bodyDistanceMm, planDistanceMm } from './point.ts';

/** The nearest place of a straight piece: how far along it (0 to 1) and how far away. */
export interface NearestOnPiece {
  readonly share: number;
  readonly distanceMm: number;
}

const clampShare = (share: number): number => Math.min(1, Math.max(0, share));

/**
 * Nearest place of the straight piece a-b to a point, seen in plan; heights play no part.
 * @example
 * nearestOnPlanPiece({ xMm: 2, yMm: 3 }, { xMm: 0, yMm: 0 }, { xMm: 8, yMm: 0 }) // => { share: 0.25, distanceMm: 3 }
 */
export function nearestOnPlanPiece(point: PlanPoint, a: PlanPoint, b: PlanPoint): NearestOnPiece {
  const dx = b.xMm - a.xMm;
  const dy = b.yMm - a.yMm;
  const squared = dx * dx + dy * dy;
  const share = squared > 0 ? clampShare(((point.xMm - a.xMm) * dx + (point.yMm - a.yMm) * dy) / squared) : 0;
  return { share, distanceMm: planDistanceMm(point, { xMm: a.xMm + dx * share, yMm: a.yMm + dy * share }) };
}

/**
 * Squared distance in plan from a point to the straight piece a-b, mm2: for comparing many.
 * @example
 * planPieceSquaredMm2({ xMm: 2, yMm: 3 }, { xMm: 0, yMm: 0 }, { xMm: 8, yMm: 0 }) // => 9
 */
export function planPieceSquaredMm2(point: PlanPoint, a: PlanPoint, b: PlanPoint): number {
  const dx = b.xMm - a.xMm;
  const dy = b.yMm - a.yMm;
  const px = point.xMm - a.xMm;
  const py = point.yMm - a.yMm;
  const squared = dx * dx + dy * dy;
  const share = squared > 0 ? Math.min(1, Math.max(0, (px * dx + py * dy) / squared)) : 0;
  const offX = px - dx * share;
  const offY = py - dy * share;
  return offX * offX + offY * offY;
}

/**
 * Squared distance from a point to the straight piece a-b, heights included, mm2.
 * @example
 * bodyPieceSquaredMm2({ xMm: 2, yMm: 3, zMm: 4 }, { xMm: 0, yMm: 0, zMm: 0 }, { xMm: 8, yMm: 0, zMm: 0 }) // => 25
 */
export function bodyPieceSquaredMm2(point: BodyPoint, a: BodyPoint, b: BodyPoint): number {
  const dx = b.xMm - a.xMm;
  const dy = b.yMm - a.yMm;
  const dz = b.zMm - a.zMm;
  const px = point.xMm - a.xMm;
  const py = point.yMm - a.yMm;
  const pz = point.zMm - a.zMm;
  const squared = dx * dx + dy * dy + dz * dz;
  const share = squared > 0 ? Math.min(1, Math.max(0, (px * dx + py * dy + pz * dz) / squared)) : 0;
  const offX = px - dx * share;
  const offY = py - dy * share;
  const offZ = pz - dz * share;
  return offX * offX + offY * offY + offZ * offZ;
}

/**
 * Nearest place of the straight piece a-b to a point, heights included.
 * @example
 * nearestOnBodyPiece({ xMm: 2, yMm: 3, zMm: 4 }, { xMm: 0, yMm: 0, zMm: 0 }, { xMm: 8, yMm: 0, zMm: 0 }) // => { share: 0.25, distanceMm: 5 }
 */
export function nearestOnBodyPiece(point: BodyPoint, a: BodyPoint, b: BodyPoint): NearestOnPiece {
  const dx = b.xMm - a.xMm;
  const dy = b.yMm - a.yMm;
  const dz = b.zMm - a.zMm;
  const squared = dx * dx + dy * dy + dz * dz;
  const along = (point.xMm - a.xMm) * dx + (point.yMm - a.yMm) * dy + (point.zMm - a.zMm) * dz;
  const share = squared > 0 ? clampShare(along / squared) : 0;
  return {
    share,
    distanceMm: bodyDistanceMm(point, {
      xMm: a.xMm + dx * share,
      yMm: a.yMm + dy * share,
      zMm: a.zMm + dz * share,
    }),
  };
}
