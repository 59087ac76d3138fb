import type { RubSpot } from '../map/records.ts';

/** A mapped spot laid out for asking the distance to it again and again: straight pieces from corner to corner. */
export interface SpotForm {
  /** Where each piece starts, and from there to where it ends; heights only where they count. */
  readonly xMm: Float64Array;
  readonly yMm: Float64Array;
  readonly zMm: Float64Array;
  readonly dxMm: Float64Array;
  readonly dyMm: Float64Array;
  readonly dzMm: Float64Array;
  readonly endYMm: Float64Array;
  /** One over the square of a piece's length; 0 for a point. */
  readonly perSquare: Float64Array;
  readonly area: boolean;
  readonly inSpace: boolean;
}

/**
 * The form of a spot, in plan or with heights; an area is taken in plan.
 * @example
 * spotForm(sample.rubSpot, false).area // => false
 */
export function spotForm({ shape, points }: Pick<RubSpot, 'shape' | 'points'>, inSpace: boolean): SpotForm {
  const area = shape === 'area' && points.length > 2;
  const pieces = area ? points.length : Math.max(1, points.length - 1);
  const start = (i: number) => points[i] as RubSpot['points'][number];
  const end = (i: number) => points[(i + 1) % points.length] as RubSpot['points'][number];
  const laid = (figure: (i: number) => number) => Float64Array.from({ length: pieces }, (_, i) => figure(i));
  const dxMm = laid((i) => end(i).xMm - start(i).xMm);
  const dyMm = laid((i) => end(i).yMm - start(i).yMm);
  const dzMm = laid((i) => (inSpace ? end(i).zMm - start(i).zMm : 0));
  return {
    xMm: laid((i) => start(i).xMm),
    yMm: laid((i) => start(i).yMm),
    zMm: laid((i) => (inSpace ? start(i).zMm : 0)),
    dxMm,
    dyMm,
    dzMm,
    endYMm: laid((i) => end(i).yMm),
    perSquare: laid((i) => {
      const square = (dxMm[i] as number) ** 2 + (dyMm[i] as number) ** 2 + (dzMm[i] as number) ** 2;
      return square > 0 ? 1 / square : 0;
    }),
    area,
    inSpace,
  };
}

/**
 * Distance in mm from a place to a spot; inside an area the distance to its border, below zero. So it changes
 * by no more than one moves. The height is heeded only by a form with heights. O(corners).
 * @example
 * signedSpotMm(spotForm(sample.rubSpot, false), 747, 0, 0) // => 5
 */
export function signedSpotMm(form: SpotForm, x: number, y: number, z: number): number {
  const { xMm, yMm, zMm, dxMm, dyMm, dzMm, endYMm, perSquare, area, inSpace } = form;
  const height = inSpace ? z : 0;
  let nearest = Number.POSITIVE_INFINITY;
  let inside = false;
  for (let i = 0; i < xMm.length; i++) {
    const dx = dxMm[i] as number;
    const dy = dyMm[i] as number;
    const dz = dzMm[i] as number;
    const fromX = x - (xMm[i] as number);
    const fromY = y - (yMm[i] as number);
    const fromZ = height - (zMm[i] as number);
    const along = (fromX * dx + fromY * dy + fromZ * dz) * (perSquare[i] as number);
    const share = Math.min(1, Math.max(0, along));
    const offX = fromX - dx * share;
    const offY = fromY - dy * share;
    const offZ = fromZ - dz * share;
    const off = offX * offX + offY * offY + offZ * offZ;
    if (off < nearest) nearest = off;
    // Even-odd rule, as for every area of a map.
    if (area && fromY < 0 !== y < (endYMm[i] as number) && fromX < (dx * fromY) / dy) inside = !inside;
  }
  const distance = Math.sqrt(nearest);
  return inside ? -distance : distance;
}
