import type { PlanPoint } from './place.ts';

/** The smallest upright rectangle round something on the plan view, in mm. */
export interface Bounds {
  readonly minXMm: number;
  readonly minYMm: number;
  readonly maxXMm: number;
  readonly maxYMm: number;
}

/**
 * The rectangle round some points; null when there are none. O(points).
 * @example
 * boundsOf([{ xMm: 3, yMm: 1 }, { xMm: 0, yMm: 2 }]) // => { minXMm: 0, minYMm: 1, maxXMm: 3, maxYMm: 2 }
 */
export function boundsOf(points: Iterable<PlanPoint>): Bounds | null {
  let minXMm = Number.POSITIVE_INFINITY;
  let minYMm = Number.POSITIVE_INFINITY;
  let maxXMm = Number.NEGATIVE_INFINITY;
  let maxYMm = Number.NEGATIVE_INFINITY;
  for (const { xMm, yMm } of points) {
    if (xMm < minXMm) minXMm = xMm;
    if (xMm > maxXMm) maxXMm = xMm;
    if (yMm < minYMm) minYMm = yMm;
    if (yMm > maxYMm) maxYMm = yMm;
  }
  return minXMm > maxXMm ? null : { minXMm, minYMm, maxXMm, maxYMm };
}

/**
 * The rectangle grown by a margin on every side, in mm.
 * @example
 * grownBounds({ minXMm: 0, minYMm: 0, maxXMm: 1, maxYMm: 1 }, 2).maxXMm // => 3
 */
export function grownBounds(bounds: Bounds, marginMm: number): Bounds {
  return {
    minXMm: bounds.minXMm - marginMm,
    minYMm: bounds.minYMm - marginMm,
    maxXMm: bounds.maxXMm + marginMm,
    maxYMm: bounds.maxYMm + marginMm,
  };
}

/**
 * The rectangle round two rectangles.
 * @example
 * joinedBounds({ minXMm: 0, minYMm: 0, maxXMm: 1, maxYMm: 1 }, { minXMm: 5, minYMm: 0, maxXMm: 6, maxYMm: 1 }).maxXMm // => 6
 */
export function joinedBounds(a: Bounds, b: Bounds): Bounds {
  return {
    minXMm: Math.min(a.minXMm, b.minXMm),
    minYMm: Math.min(a.minYMm, b.minYMm),
    maxXMm: Math.max(a.maxXMm, b.maxXMm),
    maxYMm: Math.max(a.maxYMm, b.maxYMm),
  };
}

/**
 * Whether two rectangles share at least a point.
 * @example
 * boundsMeet({ minXMm: 0, minYMm: 0, maxXMm: 1, maxYMm: 1 }, { minXMm: 1, minYMm: 1, maxXMm: 2, maxYMm: 2 }) // => true
 */
export function boundsMeet(a: Bounds, b: Bounds): boolean {
  return a.minXMm <= b.maxXMm && b.minXMm <= a.maxXMm && a.minYMm <= b.maxYMm && b.minYMm <= a.maxYMm;
}

/**
 * How far apart two rectangles are, in mm; zero where they meet. Nothing in one is nearer to anything in the other.
 * @example
 * boundsApartMm({ minXMm: 0, minYMm: 0, maxXMm: 1, maxYMm: 1 }, { minXMm: 4, minYMm: 5, maxXMm: 6, maxYMm: 6 }) // => 5
 */
export function boundsApartMm(a: Bounds, b: Bounds): number {
  const dx = Math.max(0, a.minXMm - b.maxXMm, b.minXMm - a.maxXMm);
  const dy = Math.max(0, a.minYMm - b.maxYMm, b.minYMm - a.maxYMm);
  return Math.sqrt(dx * dx + dy * dy);
}
