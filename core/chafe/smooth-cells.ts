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

/** Room for the densities of one run with those that fold back on to either end; nothing is kept in it. */
let folded = new Float64Array(0);

/**
 * Adds the densities of a run's cells, spread by a bell, to as many others. What would leave the run folds back
 * into it, so that the sum stays the same. O(cells x bell).
 * @example
 * addSpread([0, 0], [1, 0], cellBell(10, 25)) // => [0.500276, 0.499724]
 */
export function addSpread<C extends Float64Array | number[]>(
  cells: C,
  perMm: ArrayLike<number>,
  bell: CellBell,
): C {
  const count = cells.length;
  const sides = bell.length - 1;
  if (folded.length < count + 2 * sides) folded = new Float64Array(2 * (count + 2 * sides));
  for (let i = 0; i < count; i++) folded[sides + i] = perMm[i] as number;
  for (let i = 1; i <= sides; i++) {
    folded[sides - i] = perMm[foldedCell(-i, count)] as number;
    folded[sides + count - 1 + i] = perMm[foldedCell(count - 1 + i, count)] as number;
  }
  for (let i = 0; i < count; i++) {
    const at = sides + i;
    let sum = (folded[at] as number) * (bell[0] as number);
    for (let k = 1; k <= sides; k++) {
      sum += ((folded[at - k] as number) + (folded[at + k] as number)) * (bell[k] as number);
    }
    cells[i] = (cells[i] as number) + sum;
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
