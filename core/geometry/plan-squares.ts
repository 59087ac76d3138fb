import type { Bounds } from './bounds.ts';

/** Squares are numbered row by row; the widest map is far narrower than this many squares. */
const squaresInRow = 1 << 20;

/**
 * Numbers of the squares of the plan, of a given side, that a rectangle touches.
 * @example
 * squaresTouched({ minXMm: 0, minYMm: 10, maxXMm: 90, maxYMm: 120 }, 100) // => [0, 1]
 */
export function squaresTouched(bounds: Bounds, squareMm: number): readonly number[] {
  const squares: number[] = [];
  const lastX = Math.floor(bounds.maxXMm / squareMm);
  const lastY = Math.floor(bounds.maxYMm / squareMm);
  for (let x = Math.floor(bounds.minXMm / squareMm); x <= lastX; x++) {
    for (let y = Math.floor(bounds.minYMm / squareMm); y <= lastY; y++) squares.push(x * squaresInRow + y);
  }
  return squares;
}
