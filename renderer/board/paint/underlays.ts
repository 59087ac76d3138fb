import { underlayCorners } from '#core/map/underlay-place.ts';
import { toScreen } from '../camera.ts';
import type { Painter } from '../scene.ts';
import { traceLine } from './trace-line.ts';

/** Pictures under the drawing, as strong as they are set; a dashed frame where the bytes are not at hand. */
export const paintUnderlays: Painter = (c, { underlays, camera, colours }) => {
  for (const { underlay, picture } of underlays) {
    if (underlay.hidden) continue;
    const corners = underlayCorners(underlay);
    if (!picture) {
      c.strokeStyle = colours.faint;
      c.lineWidth = 1.2;
      c.setLineDash([6, 5]);
      c.beginPath();
      traceLine(c, camera, corners, true);
      c.stroke();
      c.setLineDash([]);
      continue;
    }
    const topLeft = toScreen(camera, corners[0]);
    const topRight = toScreen(camera, corners[1]);
    const bottomLeft = toScreen(camera, corners[3]);
    const { widthPx, heightPx } = underlay;
    c.save();
    c.globalAlpha = underlay.opacity;
    c.imageSmoothingQuality = 'medium';
    c.transform(
      (topRight.xPx - topLeft.xPx) / widthPx,
      (topRight.yPx - topLeft.yPx) / widthPx,
      (bottomLeft.xPx - topLeft.xPx) / heightPx,
      (bottomLeft.yPx - topLeft.yPx) / heightPx,
      topLeft.xPx,
      topLeft.yPx,
    );
    c.drawImage(picture, 0, 0, widthPx, heightPx);
    c.restore();
  }
};
