import type { Bounds } from '#core/geometry/bounds.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { wholeBox } from '../../board/board-index.ts';
import { type Camera, fitCamera, isInView, type ScreenSize, toPlan } from '../../board/camera.ts';
import type { Frame } from './use-picture-intake.ts';

/** Gone to from a list, a thing is shown no larger than this. */
const closestPxPerMm = 0.8;

/**
 * The camera that shows a rectangle: the present one when it does already, else one moved onto it. With `topPx`,
 * in the part of the screen of this size that begins so far down.
 */
export function cameraShowing(box: Bounds, camera: Camera, size: ScreenSize, topPx = 0): Camera {
  const from = { ...camera, yPx: camera.yPx - topPx };
  const shown = shownIn(box, from, size);
  return shown === from ? camera : { ...shown, yPx: shown.yPx + topPx };
}

function shownIn(box: Bounds, camera: Camera, size: ScreenSize): Camera {
  if (isInView(box, camera, size, 40)) return camera;
  const fitted = fitCamera(box, size, 120);
  if (fitted.pxPerMm <= closestPxPerMm) return fitted;
  return {
    pxPerMm: closestPxPerMm,
    xPx: size.widthPx / 2 - ((box.minXMm + box.maxXMm) / 2) * closestPxPerMm,
    yPx: size.heightPx / 2 + ((box.minYMm + box.maxYMm) / 2) * closestPxPerMm,
  };
}

/** The camera that shows all that is drawn. */
export function wholeCamera(map: MapDocument, size: ScreenSize): Camera {
  return fitCamera(wholeBox(map), size, 60);
}

/** The middle four fifths of what is in view, which a new picture fills. */
export function frameInView(camera: Camera | null, size: ScreenSize): Frame {
  if (!camera) return { middle: { xMm: 2_100, yMm: 0 }, widthMm: 4_200, heightMm: 1_800 };
  return {
    middle: toPlan(camera, { xPx: size.widthPx / 2, yPx: size.heightPx / 2 }),
    widthMm: (size.widthPx / camera.pxPerMm) * 0.8,
    heightMm: (size.heightPx / camera.pxPerMm) * 0.8,
  };
}
