import type { Camera } from '../camera.ts';

/** How large marks are drawn: full size from 0.3 px a mm, half of it where the whole car is 500 px long. */
export function markScale(camera: Camera): number {
  return Math.min(1, Math.max(0.5, camera.pxPerMm / 0.3));
}
