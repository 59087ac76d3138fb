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
    const dx = b.xMm - a.xMm;
    const dy = b.yMm - a.yMm;
    const squared = dx * dx + dy * dy;
    const along = squared > 0 ? ((point.xMm - a.xMm) * dx + (point.yMm - a.yMm) * dy) / squared : 0;
    const share = Math.min(1, Math.max(0, along));
    const at = { xMm: a.xMm + dx * share, yMm: a.yMm + dy * share };
    const distanceMm = Math.hypot(point.xMm - at.xMm, point.yMm - at.yMm);
    if (distanceMm < best.distanceMm) best = { piece, share, at, distanceMm };
  }
  return best;
}

/** Whether a point lies inside a closed area (even-odd rule). */
export function insideArea(area: readonly PlanPoint[], point: PlanPoint): boolean {
  let inside = false;
  for (let i = 0, j = area.length - 1; i < area.length; j = i++) {
    const a = area[i] as PlanPoint;
    const b = area[j] as PlanPoint;
    if (a.yMm > point.yMm === b.yMm > point.yMm) continue;
    const crossing = ((b.xMm - a.xMm) * (point.yMm - a.yMm)) / (b.yMm - a.yMm) + a.xMm;
    if (point.xMm < crossing) inside = !inside;
  }
  return inside;
}
