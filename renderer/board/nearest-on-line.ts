import { nearestOnPlanPiece } from '#core/geometry/nearest-on-piece.ts';
import type { PlanPoint } from '#core/geometry/place.ts';

export interface NearestOnLine {
  readonly piece: number;
  readonly share: number;
  readonly at: PlanPoint;
  readonly distanceMm: number;
}

/** The place on a plan line nearest to a point. O(points of the line). */
export function nearestOnLine(line: readonly PlanPoint[], point: PlanPoint): NearestOnLine {
  let best: NearestOnLine = {
    piece: 0,
    share: 0,
    at: line[0] ?? point,
    distanceMm: Number.POSITIVE_INFINITY,
  };
  for (let piece = 0; piece + 1 < line.length; piece++) {
    const a = line[piece] as PlanPoint;
    const b = line[piece + 1] as PlanPoint;
    const { share, distanceMm } = nearestOnPlanPiece(point, a, b);
    if (distanceMm >= best.distanceMm) continue;
    const at = { xMm: a.xMm + (b.xMm - a.xMm) * share, yMm: a.yMm + (b.yMm - a.yMm) * share };
    best = { piece, share, at, distanceMm };
  }
  return best;
}
