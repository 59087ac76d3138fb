import { nearestStation } from './nearest-station.ts';
import type { BodyPoint } from './place.ts';
import { planDistanceMm } from './point.ts';
import { stationLine } from './station-line.ts';

/** An outer corner that turns further than this would throw its point far off; it goes round in steps instead. */
const widestMitreRad = (2 * Math.PI) / 3;
const widestStepRad = Math.PI / 4;

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
  for (let i = 0; i < points.length; i++) {
    const at = points[i] as BodyPoint;
    const before = normals[Math.max(0, i - 1)] as Normal;
    const after = normals[Math.min(normals.length - 1, i)] as Normal;
    const roomMm = Math.min(
      i > 0 ? planDistanceMm(points[i - 1] as BodyPoint, at) : Number.POSITIVE_INFINITY,
      i < points.length - 1 ? planDistanceMm(at, points[i + 1] as BodyPoint) : Number.POSITIVE_INFINITY,
    );
    for (const { x, y } of cornerOffsets(before, after, offsetMm, roomMm)) {
      shifted.push({ xMm: at.xMm + x, yMm: at.yMm + y, zMm: at.zMm });
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

/**
 * Where the offset line passes a corner, from the corner: once, at the mitre; round a sharp outer corner
 * at the corners of a polygon about the circle of the offset, so that it never comes nearer. An inner
 * corner without room for its mitre gets both plain offsets, which lie in a fold and are dropped later.
 */
function cornerOffsets(before: Normal, after: Normal, offsetMm: number, roomMm: number): readonly Normal[] {
  const cos = before.x * after.x + before.y * after.y;
  const turnRad = Math.atan2(before.x * after.y - before.y * after.x, cos);
  const outer = turnRad * offsetMm > 0 || Math.abs(turnRad) > Math.PI - 1e-9;
  const sharp = Math.abs(turnRad) > widestMitreRad;
  if (!outer && Math.abs(offsetMm) * Math.tan(Math.abs(turnRad) / 2) > roomMm) {
    return [before, after].map(({ x, y }) => ({ x: x * offsetMm, y: y * offsetMm }));
  }
  const steps = outer && sharp ? Math.ceil(Math.abs(turnRad) / widestStepRad) : 1;
  const stepRad = turnRad / steps;
  const reachMm = offsetMm / Math.cos(stepRad / 2);
  const startRad = Math.atan2(before.y, before.x);
  return Array.from({ length: steps }, (_, k) => {
    const towardsRad = startRad + stepRad * (k + 0.5);
    return { x: reachMm * Math.cos(towardsRad), y: reachMm * Math.sin(towardsRad) };
  });
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
