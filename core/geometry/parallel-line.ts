import { nearestStation } from './nearest-station.ts';
import type { BodyPoint } from './place.ts';
import { stationLine } from './station-line.ts';

/** A corner sharper than this would throw its outer point far off; it gets two points instead. */
const longestMitre = 3;

/** Points this much nearer to the line than they should be lie in a fold and are dropped. */
const foldShare = 0.98;

/**
 * A line beside another at a constant distance in plan, heights alike; a positive offset lies to the
 * right seen from above when walking from the first point to the last. Outer corners are mitred, inner
 * folds cut off. Pieces that only climb take the direction of the piece before. O(points squared).
 * @example
 * parallelLine([{ xMm: 0, yMm: 0, zMm: 5 }, { xMm: 10, yMm: 0, zMm: 5 }], 3) // => [{ xMm: 0, yMm: -3, zMm: 5 }, { xMm: 10, yMm: -3, zMm: 5 }]
 */
export function parallelLine(points: readonly BodyPoint[], offsetMm: number): readonly BodyPoint[] {
  const normals = pieceNormals(points);
  const shifted: BodyPoint[] = [];
  const put = (at: BodyPoint, normal: Normal, scale: number): void => {
    shifted.push({
      xMm: at.xMm + normal.x * scale * offsetMm,
      yMm: at.yMm + normal.y * scale * offsetMm,
      zMm: at.zMm,
    });
  };
  for (let i = 0; i < points.length; i++) {
    const at = points[i] as BodyPoint;
    const before = normals[Math.max(0, i - 1)] as Normal;
    const after = normals[Math.min(normals.length - 1, i)] as Normal;
    const sum = { x: before.x + after.x, y: before.y + after.y };
    const squared = sum.x * sum.x + sum.y * sum.y;
    // |before + after|² = 2 (1 + cos turn); the mitre is 2 (before + after) / |before + after|².
    const mitre = squared > 0 ? 2 / Math.sqrt(squared) : Number.POSITIVE_INFINITY;
    if (mitre <= longestMitre) put(at, sum, 2 / squared);
    else {
      put(at, before, 1);
      put(at, after, 1);
    }
  }
  const line = stationLine(points);
  const reachMm = Math.abs(offsetMm) * foldShare;
  const last = shifted.length - 1;
  return shifted.filter((at, i) => i === 0 || i === last || nearestStation(line, at).distanceMm >= reachMm);
}

interface Normal {
  readonly x: number;
  readonly y: number;
}

/** Unit vectors to the right of each piece in plan. */
function pieceNormals(points: readonly BodyPoint[]): readonly Normal[] {
  const normals: (Normal | null)[] = [];
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1] as BodyPoint;
    const b = points[i] as BodyPoint;
    const length = Math.hypot(b.xMm - a.xMm, b.yMm - a.yMm);
    const known = normals.at(-1) ?? null;
    normals.push(length > 0 ? { x: (b.yMm - a.yMm) / length, y: (a.xMm - b.xMm) / length } : known);
  }
  const first = normals.find((normal) => normal !== null) ?? { x: 0, y: 0 };
  return normals.map((normal) => normal ?? first);
}
