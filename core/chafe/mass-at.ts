/** Cells of a run, as far as finding one goes. */
interface Cells {
  readonly cellMm: number;
  readonly cellCount: number;
}

/** Cells that take what is added to them. */
type Sums = Float64Array | number[];

/**
 * Adds hazard per hour gathered at one station of a run, shared between the two cells whose middles it lies
 * between, so that a station on a cell's border belongs to neither side by chance.
 * @example
 * addMass([0, 0, 0], { cellMm: 10, cellCount: 3 }, 17.5, 1) // => [0, 0.075, 0.025]
 */
export function addMass<C extends Sums>(
  cells: C,
  { cellMm, cellCount }: Cells,
  stationMm: number,
  mass: number,
): C {
  const place = Math.min(cellCount - 1, Math.max(0, stationMm / cellMm - 0.5));
  const cell = Math.floor(place);
  const share = place - cell;
  const density = mass / cellMm;
  cells[cell] = (cells[cell] as number) + density * (1 - share);
  if (share > 0) cells[cell + 1] = (cells[cell + 1] as number) + density * share;
  return cells;
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
 * Adds a figure kept at the borders of cells, at the middle of each, times a factor.
 * @example
 * addInMiddles([0, 1], [1, 3, 7], 2) // => [4, 11]
 */
export function addInMiddles<C extends Sums>(cells: C, perBorder: ArrayLike<number>, factor: number): C {
  for (let i = 1; i < perBorder.length; i++) {
    const middle = ((perBorder[i - 1] as number) + (perBorder[i] as number)) / 2;
    cells[i - 1] = (cells[i - 1] as number) + factor * middle;
  }
  return cells;
}

/**
 * Adds the same density to so many cells.
 * @example
 * addEvenly([0, 1], 2, 3) // => [3, 4]
 */
export function addEvenly<C extends Sums>(cells: C, cellCount: number, density: number): C {
  for (let i = 0; i < cellCount; i++) cells[i] = (cells[i] as number) + density;
  return cells;
}
