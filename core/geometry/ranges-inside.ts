import { boundsOf } from './bounds.ts';
import type { BodyPoint, PlanPoint } from './place.ts';
import { polygonContains } from './polygon.ts';
import type { StationLine } from './station-line.ts';

/** A stretch of a line by stations, in mm. */
export interface StationRange {
  readonly fromMm: number;
  readonly toMm: number;
}

/** Shares of the piece a-b at which it crosses the edge c-d; two when it runs along the edge. */
function crossingShares(a: PlanPoint, b: PlanPoint, c: PlanPoint, d: PlanPoint): readonly number[] {
  const abX = b.xMm - a.xMm;
  const abY = b.yMm - a.yMm;
  const cdX = d.xMm - c.xMm;
  const cdY = d.yMm - c.yMm;
  const cross = abX * cdY - abY * cdX;
  const acX = c.xMm - a.xMm;
  const acY = c.yMm - a.yMm;
  if (cross !== 0) {
    const alongEdge = (acX * abY - acY * abX) / cross;
    if (alongEdge < 0 || alongEdge > 1) return [];
    return [(acX * cdY - acY * cdX) / cross];
  }
  const squared = abX * abX + abY * abY;
  if (squared === 0 || acX * abY - acY * abX !== 0) return [];
  const share = (point: PlanPoint): number =>
    ((point.xMm - a.xMm) * abX + (point.yMm - a.yMm) * abY) / squared;
  return [share(c), share(d)];
}

/**
 * The stretches of a line that lie over a closed area seen in plan, in order, neighbours joined. An
 * area with fewer than three corners covers nothing. O(points x corners).
 * @example
 * rangesInside(sample.line.spans[0].line, [{ xMm: 100, yMm: -9 }, { xMm: 300, yMm: -9 }, { xMm: 300, yMm: 9 }, { xMm: 100, yMm: 9 }]) // => [{ fromMm: 100, toMm: 300 }]
 */
export function rangesInside(line: StationLine, corners: readonly PlanPoint[]): readonly StationRange[] {
  const ranges: { fromMm: number; toMm: number }[] = [];
  const bounds = boundsOf(corners);
  if (corners.length < 3 || !bounds) return ranges;
  for (let piece = 0; piece < line.points.length - 1; piece++) {
    const a = line.points[piece] as BodyPoint;
    const b = line.points[piece + 1] as BodyPoint;
    const start = line.stationsMm[piece] as number;
    const length = (line.stationsMm[piece + 1] as number) - start;
    const clear =
      Math.max(a.xMm, b.xMm) < bounds.minXMm ||
      Math.min(a.xMm, b.xMm) > bounds.maxXMm ||
      Math.max(a.yMm, b.yMm) < bounds.minYMm ||
      Math.min(a.yMm, b.yMm) > bounds.maxYMm;
    if (clear || length === 0) continue;
    const shares = [0, 1];
    let previous = corners[corners.length - 1] as PlanPoint;
    for (const corner of corners) {
      for (const share of crossingShares(a, b, previous, corner)) {
        if (share > 0 && share < 1) shares.push(share);
      }
      previous = corner;
    }
    shares.sort((left, right) => left - right);
    for (let i = 1; i < shares.length; i++) {
      const from = shares[i - 1] as number;
      const to = shares[i] as number;
      const middle = (from + to) / 2;
      const at = {
        xMm: a.xMm + (b.xMm - a.xMm) * middle,
        yMm: a.yMm + (b.yMm - a.yMm) * middle,
      };
      if (to === from || !polygonContains(corners, at)) continue;
      const last = ranges[ranges.length - 1];
      const fromMm = start + length * from;
      if (last && last.toMm >= fromMm - 1e-9) last.toMm = start + length * to;
      else ranges.push({ fromMm, toMm: start + length * to });
    }
  }
  return ranges;
}
