import type { BodyPoint } from './place.ts';
import type { StationLine } from './station-line.ts';

/** An upright box in the car, mm; heights from minus to plus infinity where they play no part. */
export interface BodyBox {
  readonly min: BodyPoint;
  readonly max: BodyPoint;
}

/**
 * The box round some points grown by a margin on every side; without heights it reaches from floor to roof
 * and beyond. O(points).
 * @example
 * boxRound([{ xMm: 1, yMm: 2, zMm: 3 }], 10, true).max // => { xMm: 11, yMm: 12, zMm: 13 }
 */
export function boxRound(points: readonly BodyPoint[], marginMm: number, withHeights: boolean): BodyBox {
  const none = Number.POSITIVE_INFINITY;
  const min = { xMm: none, yMm: none, zMm: none };
  const max = { xMm: -none, yMm: -none, zMm: -none };
  for (const { xMm, yMm, zMm } of points) {
    min.xMm = Math.min(min.xMm, xMm - marginMm);
    min.yMm = Math.min(min.yMm, yMm - marginMm);
    min.zMm = Math.min(min.zMm, zMm - marginMm);
    max.xMm = Math.max(max.xMm, xMm + marginMm);
    max.yMm = Math.max(max.yMm, yMm + marginMm);
    max.zMm = Math.max(max.zMm, zMm + marginMm);
  }
  return withHeights ? { min, max } : { min: { ...min, zMm: -none }, max: { ...max, zMm: none } };
}

/**
 * The first and last station at which a line lies in a box, in mm; null when it misses. Pieces are clipped
 * against the box's slabs (Liang and Barsky, from memory). O(points).
 * @example
 * stationsInBox(sample.line.spans[0].line, boxRound([{ xMm: 250, yMm: 0, zMm: 0 }], 50, true)) // => { fromMm: 200, toMm: 300 }
 */
export function stationsInBox(
  line: StationLine,
  { min, max }: BodyBox,
): { readonly fromMm: number; readonly toMm: number } | null {
  let fromMm = -1;
  let toMm = -1;
  for (let i = 1; i < line.points.length; i++) {
    const a = line.points[i - 1] as BodyPoint;
    const b = line.points[i] as BodyPoint;
    const alongX = slab(a.xMm, b.xMm, min.xMm, max.xMm);
    const alongY = slab(a.yMm, b.yMm, min.yMm, max.yMm);
    const alongZ = slab(a.zMm, b.zMm, min.zMm, max.zMm);
    const enter = Math.max(alongX[0], alongY[0], alongZ[0]);
    const leave = Math.min(alongX[1], alongY[1], alongZ[1]);
    if (enter > leave) continue;
    const start = line.stationsMm[i - 1] as number;
    const lengthMm = (line.stationsMm[i] as number) - start;
    if (fromMm < 0) fromMm = start + enter * lengthMm;
    toMm = start + leave * lengthMm;
  }
  return fromMm < 0 ? null : { fromMm, toMm };
}

const whole: readonly [number, number] = [0, 1];
const nothing: readonly [number, number] = [1, 0];

/** Shares of the way from a to b, 0 to 1, between which it lies inside a slab. */
function slab(a: number, b: number, min: number, max: number): readonly [number, number] {
  if (a >= min && a <= max && b >= min && b <= max) return whole;
  if ((a < min && b < min) || (a > max && b > max)) return nothing;
  const first = (min - a) / (b - a);
  const second = (max - a) / (b - a);
  return [Math.max(0, Math.min(first, second)), Math.min(1, Math.max(first, second))];
}

/**
 * Sets a place to where a line is at a station, looking from a piece known to be at or before it; gives the
 * piece it lies on. For walking along a line step by step without making a new place each time.
 * @example
 * movePlace({ xMm: 0, yMm: 0, zMm: 0 }, sample.line.spans[0].line, 250, 0) // => 0
 */
export function movePlace(
  place: { xMm: number; yMm: number; zMm: number },
  line: StationLine,
  stationMm: number,
  startPiece: number,
): number {
  let piece = startPiece;
  while (piece < line.points.length - 2 && (line.stationsMm[piece + 1] as number) < stationMm) piece++;
  const a = line.points[piece] as BodyPoint;
  const b = line.points[piece + 1] as BodyPoint;
  const start = line.stationsMm[piece] as number;
  const lengthMm = (line.stationsMm[piece + 1] as number) - start;
  const share = lengthMm > 0 ? Math.min(1, Math.max(0, (stationMm - start) / lengthMm)) : 0;
  place.xMm = a.xMm + (b.xMm - a.xMm) * share;
  place.yMm = a.yMm + (b.yMm - a.yMm) * share;
  place.zMm = a.zMm + (b.zMm - a.zMm) * share;
  return piece;
}
