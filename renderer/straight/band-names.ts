import { cutToWidth, textWidthPx } from './place-labels.ts';
import type { Piece } from './straight-picture.ts';

/** A band to be named. */
export interface NamedBand extends Piece {
  readonly key: string;
  readonly name: string;
  readonly lane: number;
}

/** A band on its row with as much of its name as there is room for. */
export interface PlacedBand {
  readonly key: string;
  /** Counted from the top over all lanes. */
  readonly row: number;
  readonly xPx: number;
  readonly widthPx: number;
  /** Empty where not even a few letters fit. */
  readonly text: string;
  readonly textPx: number;
}

const padPx = 5;

/**
 * Panel bands with their names readable: where a lane's names do not fit within their bands, its bands
 * take turns on two rows, and each name may run on until the next band of its own row, or start before
 * its band at the right end. Gives the bands and how many rows they need. O(bands log bands).
 */
export function placeBandNames(
  bands: readonly NamedBand[],
  pxPerMm: number,
  widthPx: number,
): { readonly bands: readonly PlacedBand[]; readonly rowCount: number } {
  const placed: PlacedBand[] = [];
  let rowCount = 0;
  for (const lane of [...new Set(bands.map((band) => band.lane))].sort((a, b) => a - b)) {
    const inLane = bands.filter((band) => band.lane === lane).sort((a, b) => a.fromMm - b.fromMm);
    const fits = inLane.every((band) => nameFits(band, (band.toMm - band.fromMm) * pxPerMm));
    const rows = fits || inLane.length < 2 ? 1 : 2;
    for (let row = 0; row < rows; row++) {
      const inRow = inLane.filter((_, index) => index % rows === row);
      placed.push(...namesInRow(inRow, rowCount + row, pxPerMm, widthPx));
    }
    rowCount += rows;
  }
  return { bands: placed, rowCount };
}

const nameFits = (band: NamedBand, widthPx: number): boolean => textWidthPx(band.name) + 2 * padPx <= widthPx;

function namesInRow(
  bands: readonly NamedBand[],
  row: number,
  pxPerMm: number,
  widthPx: number,
): readonly PlacedBand[] {
  let takenPx = 0;
  return bands.map((band, index) => {
    const xPx = band.fromMm * pxPerMm;
    const bandPx = Math.max(2, (band.toMm - band.fromMm) * pxPerMm - 1);
    const next = bands[index + 1];
    const endPx = next ? next.fromMm * pxPerMm - padPx : widthPx;
    const wantedPx = textWidthPx(band.name);
    const startPx = Math.max(takenPx, Math.min(xPx + padPx, endPx - wantedPx));
    const text = cutToWidth(band.name, endPx - startPx);
    takenPx = Math.max(xPx + bandPx, startPx + textWidthPx(text)) + padPx;
    return { key: band.key, row, xPx, widthPx: bandPx, text, textPx: startPx };
  });
}
