import type { ScreenSize } from '../../../board/camera.ts';

/** As in find-box.css: the box with its margins, and from which width of the board it stands at the side. */
const boxPx = 452;
const sidewaysFromPx = 800;

/** The part of the board that the box for finding leaves free: beside it, or below it where the board is narrow. */
export function besideFindBox({ widthPx, heightPx }: ScreenSize): {
  readonly size: ScreenSize;
  readonly topPx: number;
} {
  if (widthPx >= sidewaysFromPx) return { size: { widthPx: widthPx - boxPx, heightPx }, topPx: 0 };
  return { size: { widthPx, heightPx: heightPx / 2 }, topPx: heightPx / 2 };
}
