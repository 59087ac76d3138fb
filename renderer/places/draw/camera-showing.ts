import type { Bounds } from '#core/geometry/bounds.ts';
import { type Camera, fitCamera, type ScreenSize, viewBox } from '../../board/camera.ts';

/** Gone to from a list, a thing is shown no larger than this. */
const closestPxPerMm = 0.8;

/** The camera that shows a rectangle: the present one when it does already, else one moved onto it. */
export function cameraShowing(box: Bounds, camera: Camera, size: ScreenSize): Camera {
  const seen = viewBox(camera, size, -40);
  const inView =
    box.minXMm >= seen.minXMm &&
    box.maxXMm <= seen.maxXMm &&
    box.minYMm >= seen.minYMm &&
    box.maxYMm <= seen.maxYMm;
  if (inView) return camera;
  const fitted = fitCamera(box, size, 120);
  if (fitted.pxPerMm <= closestPxPerMm) return fitted;
  return {
    pxPerMm: closestPxPerMm,
    xPx: size.widthPx / 2 - ((box.minXMm + box.maxXMm) / 2) * closestPxPerMm,
    yPx: size.heightPx / 2 + ((box.minYMm + box.maxYMm) / 2) * closestPxPerMm,
  };
}
