import { type Camera, type ScreenSize, toScreen } from '../../../board/camera.ts';
import type { OverlayLabel } from '../../../board/overlay.ts';

/** Room that a word of a mark takes up on the screen. */
const widePx = 84;
const highPx = 26;

/**
 * The labels of what is in view, and of those that would lie over one another only the first. Those out of view
 * would gather along the edges, for the board keeps every label on it. O(labels²), and they are few.
 */
export function spacedLabels(
  labels: readonly OverlayLabel[],
  camera: Camera,
  size: ScreenSize,
): readonly OverlayLabel[] {
  const kept: { readonly label: OverlayLabel; readonly xPx: number; readonly yPx: number }[] = [];
  for (const label of labels) {
    const { xPx, yPx } = toScreen(camera, label.at);
    if (xPx < 0 || yPx < 0 || xPx > size.widthPx || yPx > size.heightPx) continue;
    const covered = kept.some(
      (other) => Math.abs(other.xPx - xPx) < widePx && Math.abs(other.yPx - yPx) < highPx,
    );
    if (!covered) kept.push({ label, xPx, yPx });
  }
  return kept.map(({ label }) => label);
}
