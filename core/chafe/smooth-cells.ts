/** Weights of a bell of a given width over cells, middle first, the two-sided sum being one. */
export type CellBell = readonly number[];

/** Cells this many sigmas off get nothing. */
const farthestSigmas = 3;

/**
 * A bell of one sigma over cells of one width: weight of the middle cell, then of each cell to one side.
 * @example
 * cellBell(10, 25).length // => 9
 */
export function cellBell(cellMm: number, sigmaMm: number): CellBell {
  const sides = Math.ceil((farthestSigmas * sigmaMm) / cellMm);
  const bell: number[] = [];
  let sum = 0;
  for (let k = 0; k <= sides; k++) {
    const weight = Math.exp(-0.5 * ((k * cellMm) / sigmaMm) ** 2);
    bell.push(weight);
    sum += (k === 0 ? 1 : 2) * weight;
  }
  for (let k = 0; k <= sides; k++) bell[k] = (bell[k] as number) / sum;
  return bell;
}

/** Density in a window of a run's cells before it is spread. */
export interface RawWindow {
  readonly firstCell: number;
  readonly perMm: ArrayLike<number>;
}

/**
 * Adds a window of densities, spread by a bell, to those of all cells of a run. What would leave the run
 * folds back into it, so that the sum stays the same. O(window x bell).
 * @example
 * addSpread([0, 0], { firstCell: 0, perMm: [1] }, cellBell(10, 25)) // => [0.500276, 0.499724]
 */
export function addSpread(cells: number[], window: RawWindow, bell: CellBell): number[] {
  const sides = bell.length - 1;
  for (let i = 0; i < window.perMm.length; i++) {
    const density = window.perMm[i] as number;
    if (density === 0) continue;
    const at = window.firstCell + i;
    for (let k = -sides; k <= sides; k++) {
      const cell = foldedCell(at + k, cells.length);
      cells[cell] = (cells[cell] as number) + density * (bell[k < 0 ? -k : k] as number);
    }
  }
  return cells;
}

/**
 * The cell that a cell off either end folds back to.
 * @example
 * foldedCell(-1, 5) // => 0
 */
export function foldedCell(cell: number, cellCount: number): number {
  if (cell >= 0 && cell < cellCount) return cell;
  const round = 2 * cellCount;
  const wrapped = ((cell % round) + round) % round;
  return wrapped < cellCount ? wrapped : round - 1 - wrapped;
}
