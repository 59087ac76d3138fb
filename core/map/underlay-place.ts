import type { PlanPoint } from '../geometry/place.ts';
import { fail, ok, type Result } from '../quantity/result.ts';
import { samePlaceMm } from '../quantity/tolerance.ts';
import type { Underlay } from './records.ts';

/** A place in a picture, in its pixels from the top left corner, to the right and down. */
export interface PicturePoint {
  readonly uPx: number;
  readonly vPx: number;
}

/** Where a picture lies: its top left corner, the size of a pixel, and its turn. */
export type PicturePlace = Pick<Underlay, 'origin' | 'mmPerPx' | 'turnRad'>;

/**
 * The place on the plan under a pixel of a picture. Unturned, a picture lies with its right along x (to the
 * rear) and its top towards +y (the car's right), so that it reads as it does by itself on a board
 * seen from above; `turnRad` turns it about its top left corner from x towards y.
 * @example
 * pixelToPlan({ origin: { xMm: 100, yMm: 50 }, mmPerPx: 2, turnRad: 0 }, { uPx: 10, vPx: 5 }) // => { xMm: 120, yMm: 40 }
 */
export function pixelToPlan(place: PicturePlace, { uPx, vPx }: PicturePoint): PlanPoint {
  const alongMm = place.mmPerPx * Math.cos(place.turnRad);
  const acrossMm = place.mmPerPx * Math.sin(place.turnRad);
  return {
    xMm: place.origin.xMm + uPx * alongMm + vPx * acrossMm,
    yMm: place.origin.yMm + uPx * acrossMm - vPx * alongMm,
  };
}

/**
 * The pixel of a picture under a place on the plan; the reverse of `pixelToPlan`.
 * @example
 * planToPixel({ origin: { xMm: 100, yMm: 50 }, mmPerPx: 2, turnRad: 0 }, { xMm: 120, yMm: 40 }) // => { uPx: 10, vPx: 5 }
 */
export function planToPixel(place: PicturePlace, at: PlanPoint): PicturePoint {
  const xMm = at.xMm - place.origin.xMm;
  const yMm = at.yMm - place.origin.yMm;
  const cos = Math.cos(place.turnRad) / place.mmPerPx;
  const sin = Math.sin(place.turnRad) / place.mmPerPx;
  return { uPx: xMm * cos + yMm * sin, vPx: xMm * sin - yMm * cos };
}

/**
 * Where a picture lies when two of its pixels come to lie on two known places, turned and scaled alike in
 * both directions (a similarity; one pair fixes the shift, the other turn and scale). Refuses `same-point`
 * when either pair is one place.
 * @example
 * placeByTwoPoints([{ uPx: 0, vPx: 0 }, { uPx: 100, vPx: 0 }], [{ xMm: 5, yMm: 5 }, { xMm: 5, yMm: 205 }]).value // => { origin: { xMm: 5, yMm: 5 }, mmPerPx: 2, turnRad: Math.PI / 2 }
 */
export function placeByTwoPoints(
  picture: readonly [PicturePoint, PicturePoint],
  body: readonly [PlanPoint, PlanPoint],
): Result<PicturePlace> {
  const [p, q] = picture;
  const [a, b] = body;
  const uPx = q.uPx - p.uPx;
  const upPx = p.vPx - q.vPx;
  const xMm = b.xMm - a.xMm;
  const yMm = b.yMm - a.yMm;
  const spanPx = Math.hypot(uPx, upPx);
  const spanMm = Math.hypot(xMm, yMm);
  if (spanPx < 1 || spanMm < samePlaceMm) return fail({ code: 'same-point' });
  const mmPerPx = spanMm / spanPx;
  // The turn that takes the picture's direction to the body's: the angle between the two, signed.
  const turnRad = Math.atan2(uPx * yMm - upPx * xMm, uPx * xMm + upPx * yMm);
  const corner = pixelToPlan({ origin: a, mmPerPx, turnRad }, { uPx: -p.uPx, vPx: -p.vPx });
  return ok({ origin: corner, mmPerPx, turnRad });
}

/**
 * The four corners of a picture on the plan: top left, top right, bottom right, bottom left.
 * @example
 * underlayCorners({ origin: { xMm: 0, yMm: 0 }, mmPerPx: 2, turnRad: 0, widthPx: 100, heightPx: 50 })[2] // => { xMm: 200, yMm: -100 }
 */
export function underlayCorners(
  underlay: PicturePlace & Pick<Underlay, 'widthPx' | 'heightPx'>,
): readonly [PlanPoint, PlanPoint, PlanPoint, PlanPoint] {
  const { widthPx, heightPx } = underlay;
  return [
    pixelToPlan(underlay, { uPx: 0, vPx: 0 }),
    pixelToPlan(underlay, { uPx: widthPx, vPx: 0 }),
    pixelToPlan(underlay, { uPx: widthPx, vPx: heightPx }),
    pixelToPlan(underlay, { uPx: 0, vPx: heightPx }),
  ];
}
