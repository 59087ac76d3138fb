import type { Bounds } from '#core/geometry/bounds.ts';
import type { PlanPoint } from '#core/geometry/place.ts';

/** A place on the board element, in CSS pixels from its top left corner. */
export interface ScreenPoint {
  readonly xPx: number;
  readonly yPx: number;
}

/**
 * How the plan lies on the screen, seen from above with the front to the left: the car's right side is
 * up, or the drawing would be its mirror image. `xPx` and `yPx` are where the plan's origin falls.
 */
export interface Camera {
  readonly pxPerMm: number;
  readonly xPx: number;
  readonly yPx: number;
}

export interface ScreenSize {
  readonly widthPx: number;
  readonly heightPx: number;
}

/** A bus on a small screen, and a pin head on a large one. */
export const scaleLimits = { min: 0.02, max: 20 } as const;

/** Where a place on the plan falls on the screen. */
export function toScreen(camera: Camera, at: PlanPoint): ScreenPoint {
  return { xPx: camera.xPx + at.xMm * camera.pxPerMm, yPx: camera.yPx - at.yMm * camera.pxPerMm };
}

/** The place on the plan under a screen point. */
export function toPlan(camera: Camera, at: ScreenPoint): PlanPoint {
  return { xMm: (at.xPx - camera.xPx) / camera.pxPerMm, yMm: (camera.yPx - at.yPx) / camera.pxPerMm };
}

/** Moves the paper under the glass. */
export function panBy(camera: Camera, dxPx: number, dyPx: number): Camera {
  return { ...camera, xPx: camera.xPx + dxPx, yPx: camera.yPx + dyPx };
}

/** Zooms so that what lies under `at` stays there; the scale keeps to its limits. */
export function zoomAt(camera: Camera, at: ScreenPoint, factor: number): Camera {
  const pxPerMm = Math.min(scaleLimits.max, Math.max(scaleLimits.min, camera.pxPerMm * factor));
  const change = pxPerMm / camera.pxPerMm;
  return {
    pxPerMm,
    xPx: at.xPx + (camera.xPx - at.xPx) * change,
    yPx: at.yPx + (camera.yPx - at.yPx) * change,
  };
}

/** The camera that shows a whole box with a margin around it, in the middle of the screen. */
export function fitCamera(box: Bounds, size: ScreenSize, marginPx = 40): Camera {
  const widthMm = Math.max(1, box.maxXMm - box.minXMm);
  const heightMm = Math.max(1, box.maxYMm - box.minYMm);
  const wanted = Math.min(
    Math.max(1, size.widthPx - 2 * marginPx) / widthMm,
    Math.max(1, size.heightPx - 2 * marginPx) / heightMm,
  );
  const pxPerMm = Math.min(scaleLimits.max, Math.max(scaleLimits.min, wanted));
  return {
    pxPerMm,
    xPx: size.widthPx / 2 - ((box.minXMm + box.maxXMm) / 2) * pxPerMm,
    yPx: size.heightPx / 2 + ((box.minYMm + box.maxYMm) / 2) * pxPerMm,
  };
}

/** The part of the plan in view, with `marginPx` more on every side. */
export function viewBox(camera: Camera, size: ScreenSize, marginPx = 0): Bounds {
  const topLeft = toPlan(camera, { xPx: -marginPx, yPx: -marginPx });
  const bottomRight = toPlan(camera, { xPx: size.widthPx + marginPx, yPx: size.heightPx + marginPx });
  return { minXMm: topLeft.xMm, maxXMm: bottomRight.xMm, minYMm: bottomRight.yMm, maxYMm: topLeft.yMm };
}

/** Whether a box of the plan is seen whole, with so many pixels of room round it. */
export function isInView(box: Bounds, camera: Camera, size: ScreenSize, roomPx: number): boolean {
  const seen = viewBox(camera, size, -roomPx);
  return (
    box.minXMm >= seen.minXMm &&
    box.maxXMm <= seen.maxXMm &&
    box.minYMm >= seen.minYMm &&
    box.maxYMm <= seen.maxYMm
  );
}
