import { pieceDistanceMm, planPieceDistanceMm } from './piece-distance.ts';
import type { BodyPoint, PlanPoint } from './place.ts';
import { polygonContains } from './polygon.ts';

function* piecesOf<P>(path: readonly P[], closed: boolean): Generator<readonly [P, P]> {
  let previous = closed || path.length === 1 ? path[path.length - 1] : undefined;
  for (const point of path) {
    if (previous !== undefined) yield [previous, point];
    previous = point;
  }
}

/**
 * Least distance between an open line and a path of one or more points (closed when asked), heights
 * included, in mm. Infinite when either is empty. O(line points x path points).
 * @example
 * lineToPathMm(sample.line.spans[0].line.points, [{ xMm: 250, yMm: 3, zMm: 4 }], false) // => 5
 */
export function lineToPathMm(
  line: readonly BodyPoint[],
  path: readonly BodyPoint[],
  closed: boolean,
): number {
  let nearest = Number.POSITIVE_INFINITY;
  for (const [a, b] of piecesOf(line, false)) {
    for (const [c, d] of piecesOf(path, closed)) nearest = Math.min(nearest, pieceDistanceMm(a, b, c, d));
  }
  return nearest;
}

/**
 * Least distance between an open line and a closed area seen in plan, in mm; zero where the line enters
 * it. Infinite when either is empty. O(line points x corners).
 * @example
 * lineToAreaMm([{ xMm: 0, yMm: 9 }, { xMm: 5, yMm: 9 }], [{ xMm: 0, yMm: 0 }, { xMm: 4, yMm: 0 }, { xMm: 4, yMm: 4 }]) // => 5
 */
export function lineToAreaMm(line: readonly PlanPoint[], corners: readonly PlanPoint[]): number {
  const first = line[0];
  if (first && polygonContains(corners, first)) return 0;
  let nearest = Number.POSITIVE_INFINITY;
  for (const [a, b] of piecesOf(line, false)) {
    for (const [c, d] of piecesOf(corners, true))
      nearest = Math.min(nearest, planPieceDistanceMm(a, b, c, d));
  }
  return nearest;
}
