import { type Camera, panBy, type ScreenPoint, zoomAt } from './camera.ts';

export interface WheelTurn {
  readonly deltaX: number;
  readonly deltaY: number;
  /** 0 pixels, 1 lines, 2 pages. */
  readonly deltaMode: number;
  readonly pinch: boolean;
  readonly shift: boolean;
}

const pxPerLine = 16;

/**
 * A mouse wheel zooms at the pointer, two fingers on a pad pan, a pinch on the pad zooms. A pad tells
 * itself from a wheel by sideways motion or by steps smaller than a wheel's notch.
 */
export function turnWheel(camera: Camera, at: ScreenPoint, wheel: WheelTurn): Camera {
  const scale = wheel.deltaMode === 0 ? 1 : pxPerLine;
  const dx = wheel.deltaX * scale;
  const dy = wheel.deltaY * scale;
  if (wheel.pinch) return zoomAt(camera, at, Math.exp(-dy * 0.01));
  if (wheel.shift) return panBy(camera, -(dx || dy), 0);
  const pad = dx !== 0 || (wheel.deltaMode === 0 && Math.abs(dy) < 40);
  return pad ? panBy(camera, -dx, -dy) : zoomAt(camera, at, Math.exp(-dy * 0.0022));
}
