import type { Bounds } from '#core/geometry/bounds.ts';
import {
  type Camera,
  fitCamera,
  isInView,
  type ScreenSize,
  scaleLimits,
  toPlan,
  toScreen,
} from './camera.ts';

/** A camera somebody chose, and the board it was chosen on. */
export interface ChosenLook {
  readonly camera: Camera;
  readonly size: ScreenSize;
}

/** Below this share of change the paper lies still: a bar that grew by a line must not move what one draws on. */
const smallChange = 0.1;
/** With less room than this round the drawing it no longer counts as in view, in px. */
const leastRoomPx = 12;

/**
 * The camera for a board of another size that keeps in view what was in view: the whole drawing where the whole
 * was seen, else the same middle, drawn smaller where the board shrank. Made from the chosen look alone, so that a
 * window made smaller and larger again shows what it showed before.
 */
export function resizedCamera(look: ChosenLook, size: ScreenSize, whole: Bounds): Camera {
  const { camera, size: before } = look;
  const byWidth = size.widthPx / before.widthPx;
  const byHeight = size.heightPx / before.heightPx;
  const small = Math.abs(byWidth - 1) < smallChange && Math.abs(byHeight - 1) < smallChange;
  const sawAll = isInView(whole, camera, before, 0);
  if (small && (!sawAll || isInView(whole, camera, size, leastRoomPx))) return camera;
  const factor = sawAll
    ? fitCamera(whole, size).pxPerMm / fitCamera(whole, before).pxPerMm
    : Math.min(1, byWidth, byHeight);
  // What stood in the middle stays there; a whole drawing keeps its place beside the middle in proportion.
  const at = sawAll ? middleOf(whole) : toPlan(camera, { xPx: before.widthPx / 2, yPx: before.heightPx / 2 });
  const stood = toScreen(camera, at);
  const pxPerMm = Math.min(scaleLimits.max, Math.max(scaleLimits.min, camera.pxPerMm * factor));
  const xPx = size.widthPx / 2 + (stood.xPx - before.widthPx / 2) * factor;
  const yPx = size.heightPx / 2 + (stood.yPx - before.heightPx / 2) * factor;
  return { pxPerMm, xPx: xPx - at.xMm * pxPerMm, yPx: yPx + at.yMm * pxPerMm };
}

const middleOf = (box: Bounds) => ({
  xMm: (box.minXMm + box.maxXMm) / 2,
  yMm: (box.minYMm + box.maxYMm) / 2,
});
