/** A label that wants to sit above a place. */
export interface WantedLabel {
  readonly key: string;
  readonly text: string;
  readonly xPx: number;
  /** Lower comes first when there is not room for all. */
  readonly precedence: number;
}

export interface PlacedLabel {
  readonly key: string;
  readonly text: string;
  /** Left edge. */
  readonly xPx: number;
  readonly row: number;
}

/** Mean advance of the bundled face at 13 px; a little wide, so that labels never touch. */
const pxPerLetter = 7.6;
const gapPx = 8;

/** About how wide a text is at 13 px. */
export function textWidthPx(text: string): number {
  return text.length * pxPerLetter;
}

/** A text cut to a width, with a mark where it was cut; empty when not even four letters fit. */
export function cutToWidth(text: string, widthPx: number): string {
  if (textWidthPx(text) <= widthPx) return text;
  const letters = Math.floor(widthPx / pxPerLetter) - 1;
  return letters < 4 ? '' : `${text.slice(0, letters).trimEnd()}…`;
}

/** Sets labels centred over their places in a few rows without overlaps; those without room are left out. */
export function placeLabels(
  wanted: readonly WantedLabel[],
  widthPx: number,
  rows: number,
): readonly PlacedLabel[] {
  const taken: { from: number; to: number }[][] = Array.from({ length: rows }, () => []);
  const placed: PlacedLabel[] = [];
  const inOrder = [...wanted].sort((a, b) => a.precedence - b.precedence || a.xPx - b.xPx);
  for (const label of inOrder) {
    const labelPx = textWidthPx(label.text);
    const xPx = Math.max(0, Math.min(widthPx - labelPx, label.xPx - labelPx / 2));
    const row = taken.findIndex((row) =>
      row.every((other) => xPx >= other.to + gapPx || xPx + labelPx + gapPx <= other.from),
    );
    if (row < 0) continue;
    taken[row]?.push({ from: xPx, to: xPx + labelPx });
    placed.push({ key: label.key, text: label.text, xPx, row });
  }
  return placed;
}
