import type { Bounds } from '#core/geometry/bounds.ts';
import { type Camera, fitCamera, panBy, type ScreenSize, zoomAt } from './camera.ts';

const arrowPx = 64;
const zoomStep = 1.25;

/** Where a key takes the view: arrows pan, plus and minus zoom about the middle, F shows all. Null: no such key. */
export function keyCamera(camera: Camera, key: string, size: ScreenSize, whole: Bounds): Camera | null {
  const middle = { xPx: size.widthPx / 2, yPx: size.heightPx / 2 };
  switch (key) {
    case 'ArrowLeft':
      return panBy(camera, arrowPx, 0);
    case 'ArrowRight':
      return panBy(camera, -arrowPx, 0);
    case 'ArrowUp':
      return panBy(camera, 0, arrowPx);
    case 'ArrowDown':
      return panBy(camera, 0, -arrowPx);
    case '+':
    case '=':
      return zoomAt(camera, middle, zoomStep);
    case '-':
      return zoomAt(camera, middle, 1 / zoomStep);
    case 'f':
    case 'F':
      return fitCamera(whole, size);
    default:
      return null;
  }
}
