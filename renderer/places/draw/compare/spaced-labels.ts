import type { OverlayLabel } from '../../../board/overlay.ts';

/** Room that a word of a mark takes up on the screen. */
const widePx = 84;
const highPx = 26;

/** Of labels that would lie over one another at this scale only the first stays. O(labels²), and they are few. */
export function spacedLabels(labels: readonly OverlayLabel[], pxPerMm: number): readonly OverlayLabel[] {
  const kept: OverlayLabel[] = [];
  for (const label of labels) {
    const covered = kept.some(
      ({ at }) =>
        Math.abs(at.xMm - label.at.xMm) * pxPerMm < widePx &&
        Math.abs(at.yMm - label.at.yMm) * pxPerMm < highPx,
    );
    if (!covered) kept.push(label);
  }
  return kept;
}
