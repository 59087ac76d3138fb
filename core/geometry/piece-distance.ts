import { bodyPieceSquaredMm2, planPieceSquaredMm2 } from './nearest-on-piece.ts';
import type { BodyPoint, PlanPoint } from './place.ts';

const onPlan = (point: PlanPoint): BodyPoint => ({ xMm: point.xMm, yMm: point.yMm, zMm: 0 });

/**
 * Least distance between two straight pieces in the car, heights included, in mm: either inside both
 * (the common perpendicular) or from an end of one to the other.
 * @example
 * pieceDistanceMm({ xMm: 0, yMm: 0, zMm: 0 }, { xMm: 9, yMm: 0, zMm: 0 }, { xMm: 4, yMm: -5, zMm: 7 }, { xMm: 4, yMm: 5, zMm: 7 }) // => 7
 */
export function pieceDistanceMm(a: BodyPoint, b: BodyPoint, c: BodyPoint, d: BodyPoint): number {
  const ends = Math.sqrt(
    Math.min(
      bodyPieceSquaredMm2(a, c, d),
      bodyPieceSquaredMm2(b, c, d),
      bodyPieceSquaredMm2(c, a, b),
      bodyPieceSquaredMm2(d, a, b),
    ),
  );
  const u = { x: b.xMm - a.xMm, y: b.yMm - a.yMm, z: b.zMm - a.zMm };
  const v = { x: d.xMm - c.xMm, y: d.yMm - c.yMm, z: d.zMm - c.zMm };
  const w = { x: a.xMm - c.xMm, y: a.yMm - c.yMm, z: a.zMm - c.zMm };
  const uu = u.x * u.x + u.y * u.y + u.z * u.z;
  const uv = u.x * v.x + u.y * v.y + u.z * v.z;
  const vv = v.x * v.x + v.y * v.y + v.z * v.z;
  const uw = u.x * w.x + u.y * w.y + u.z * w.z;
  const vw = v.x * w.x + v.y * w.y + v.z * w.z;
  const spread = uu * vv - uv * uv;
  if (spread <= 1e-12 * uu * vv) return ends;
  const s = (uv * vw - vv * uw) / spread;
  const t = (uu * vw - uv * uw) / spread;
  if (s < 0 || s > 1 || t < 0 || t > 1) return ends;
  const x = w.x + u.x * s - v.x * t;
  const y = w.y + u.y * s - v.y * t;
  const z = w.z + u.z * s - v.z * t;
  return Math.min(ends, Math.sqrt(x * x + y * y + z * z));
}

/**
 * Least distance between two straight pieces seen in plan, in mm; zero where they cross.
 * @example
 * planPieceDistanceMm({ xMm: 0, yMm: 0 }, { xMm: 9, yMm: 0 }, { xMm: 4, yMm: 2 }, { xMm: 4, yMm: 5 }) // => 2
 */
export function planPieceDistanceMm(a: PlanPoint, b: PlanPoint, c: PlanPoint, d: PlanPoint): number {
  return pieceDistanceMm(onPlan(a), onPlan(b), onPlan(c), onPlan(d));
}

/**
 * Least distance from a place to a path of one or more points, closed back to its start when asked, in
 * mm, heights included. Infinite for an empty path. O(points).
 * @example
 * bodyDistanceToPathMm({ xMm: 0, yMm: 0, zMm: 2 }, [{ xMm: -1, yMm: 0, zMm: 0 }, { xMm: 1, yMm: 0, zMm: 0 }], false) // => 2
 */
export function bodyDistanceToPathMm(point: BodyPoint, path: readonly BodyPoint[], closed: boolean): number {
  let nearest = Number.POSITIVE_INFINITY;
  let previous = closed || path.length === 1 ? path[path.length - 1] : undefined;
  for (const corner of path) {
    if (previous) nearest = Math.min(nearest, bodyPieceSquaredMm2(point, previous, corner));
    previous = corner;
  }
  return Math.sqrt(nearest);
}

/**
 * As `bodyDistanceToPathMm`, seen in plan: heights play no part.
 * @example
 * planDistanceToPathMm({ xMm: 0, yMm: 5 }, [{ xMm: -1, yMm: 0 }, { xMm: 1, yMm: 0 }], false) // => 5
 */
export function planDistanceToPathMm(point: PlanPoint, path: readonly PlanPoint[], closed: boolean): number {
  let nearest = Number.POSITIVE_INFINITY;
  let previous = closed || path.length === 1 ? path[path.length - 1] : undefined;
  for (const corner of path) {
    if (previous) nearest = Math.min(nearest, planPieceSquaredMm2(point, previous, corner));
    previous = corner;
  }
  return Math.sqrt(nearest);
}
