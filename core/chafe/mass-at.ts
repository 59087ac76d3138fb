import type { RawWindow } from './smooth-cells.ts';

/** Cells of a run, as far as finding one goes. */
interface Cells {
  readonly cellMm: number;
  readonly cellCount: number;
}

/**
 * Hazard per hour gathered at one station of a run, shared between the two cells whose middles it lies
 * between, so that a station on a cell's border belongs to neither side by chance.
 * @example
 * massAt({ cellMm: 10, cellCount: 50 }, 257.5, 1) // => { firstCell: 25, perMm: [0.075, 0.025], placed: true }
 */
export function massAt(run: Cells, stationMm: number, mass: number): RawWindow & { readonly placed: true } {
  const place = Math.min(run.cellCount - 1, Math.max(0, stationMm / run.cellMm - 0.5));
  const cell = Math.floor(place);
  const share = place - cell;
  const density = mass / run.cellMm;
  const perMm = share > 0 ? [density * (1 - share), density * share] : [density];
  return { firstCell: cell, perMm, placed: true };
}

/**
 * A figure kept at the borders of cells, read at a station: straight between borders, held at the ends.
 * @example
 * readAt({ cellMm: 10, cellCount: 2 }, [1, 3, 7], 15) // => 5
 */
export function readAt(
  { cellMm, cellCount }: Cells,
  perBorder: ArrayLike<number>,
  stationMm: number,
): number {
  const place = Math.min(cellCount, Math.max(0, stationMm / cellMm));
  const border = Math.min(cellCount - 1, Math.floor(place));
  const here = perBorder[border] as number;
  return here + ((perBorder[border + 1] as number) - here) * (place - border);
}

/**
 * A figure kept at the borders of cells, at the middle of each, times a factor.
 * @example
 * inMiddles([1, 3, 7], 2) // => [4, 10]
 */
export function inMiddles(perBorder: ArrayLike<number>, factor: number): readonly number[] {
  const middles: number[] = [];
  for (let i = 1; i < perBorder.length; i++) {
    middles.push((factor * ((perBorder[i - 1] as number) + (perBorder[i] as number))) / 2);
  }
  return middles;
}
