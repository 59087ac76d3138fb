import type { RubSpot } from '../map/records.ts';

/** A mapped spot laid out for asking the distance to it again and again. */
export interface SpotForm {
  /** Corners; an area's first corner once more at its end. */
  readonly xMm: Float64Array;
  readonly yMm: Float64Array;
  readonly zMm: Float64Array;
  readonly area: boolean;
}

const known = new WeakMap<RubSpot, SpotForm>();

/**
 * The form of a spot, remembered with its record.
 * @example
 * spotForm(sample.rubSpot).area // => false
 */
export function spotForm(spot: RubSpot): SpotForm {
  const before = known.get(spot);
  if (before) return before;
  const area = spot.shape === 'area' && spot.points.length > 2;
  const points = area ? [...spot.points, ...spot.points.slice(0, 1)] : spot.points;
  const form: SpotForm = {
    xMm: Float64Array.from(points, (point) => point.xMm),
    yMm: Float64Array.from(points, (point) => point.yMm),
    zMm: Float64Array.from(points, (point) => point.zMm),
    area,
  };
  known.set(spot, form);
  return form;
}

/**
 * Distance in mm from a place to a spot; inside an area the distance to its border, below zero. So it changes
 * by no more than one moves. Heights count when `inSpace`; an area is taken in plan. O(corners).
 * @example
 * signedSpotMm(spotForm(sample.rubSpot), 747, 0, 0, false) // => 5
 */
export function signedSpotMm(form: SpotForm, x: number, y: number, z: number, inSpace: boolean): number {
  const { xMm, yMm, zMm, area } = form;
  let beforeX = xMm[0] as number;
  let beforeY = yMm[0] as number;
  let beforeZ = inSpace ? (zMm[0] as number) : z;
  let offX = x - beforeX;
  let offY = y - beforeY;
  let offZ = z - beforeZ;
  let nearest = offX * offX + offY * offY + offZ * offZ;
  let inside = false;
  for (let i = 1; i < xMm.length; i++) {
    const cornerX = xMm[i] as number;
    const cornerY = yMm[i] as number;
    const cornerZ = inSpace ? (zMm[i] as number) : z;
    const dx = cornerX - beforeX;
    const dy = cornerY - beforeY;
    const dz = cornerZ - beforeZ;
    const squared = dx * dx + dy * dy + dz * dz;
    const along = (x - beforeX) * dx + (y - beforeY) * dy + (z - beforeZ) * dz;
    const share = along <= 0 || squared === 0 ? 0 : along >= squared ? 1 : along / squared;
    offX = x - beforeX - dx * share;
    offY = y - beforeY - dy * share;
    offZ = z - beforeZ - dz * share;
    const off = offX * offX + offY * offY + offZ * offZ;
    if (off < nearest) nearest = off;
    // Even-odd rule, as for every area of a map.
    if (area && cornerY > y !== beforeY > y && x < cornerX - (dx * (cornerY - y)) / dy) inside = !inside;
    beforeX = cornerX;
    beforeY = cornerY;
    beforeZ = cornerZ;
  }
  const distance = Math.sqrt(nearest);
  return inside ? -distance : distance;
}
