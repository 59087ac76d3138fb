import { type Camera, panBy, type ScreenPoint, zoomAt } from './camera.ts';

/** Two fingers on the glass, before and after a move. */
export type FingerPair = readonly [ScreenPoint, ScreenPoint];

/** The camera that keeps the plan under both fingers: they pan with their middle and zoom with their gap. */
export function twoFingerCamera(camera: Camera, before: FingerPair, after: FingerPair): Camera {
  const from = middle(before);
  const to = middle(after);
  const factor = gap(after) / Math.max(1, gap(before));
  return zoomAt(panBy(camera, to.xPx - from.xPx, to.yPx - from.yPx), to, factor);
}

const middle = ([a, b]: FingerPair): ScreenPoint => ({ xPx: (a.xPx + b.xPx) / 2, yPx: (a.yPx + b.yPx) / 2 });
const gap = ([a, b]: FingerPair): number => Math.hypot(a.xPx - b.xPx, a.yPx - b.yPx);
