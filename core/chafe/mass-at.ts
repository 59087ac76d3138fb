import type { RawWindow } from './smooth-cells.ts';

/**
 * Hazard per hour gathered at one station of a run, as a window of one cell.
 * @example
 * massAt({ cellMm: 10, cellCount: 50 }, 255, 1) // => { firstCell: 25, perMm: [0.1], placed: true }
 */
export function massAt(
  run: { readonly cellMm: number; readonly cellCount: number },
  stationMm: number,
  mass: number,
): RawWindow & { readonly placed: true } {
  return { firstCell: cellAt(run, stationMm), perMm: [mass / run.cellMm], placed: true };
}

/**
 * The cell of a run that holds a station; stations off either end give the end cell.
 * @example
 * cellAt({ cellMm: 10, cellCount: 50 }, 255) // => 25
 */
export function cellAt(
  run: { readonly cellMm: number; readonly cellCount: number },
  stationMm: number,
): number {
  return Math.min(run.cellCount - 1, Math.max(0, Math.floor(stationMm / run.cellMm)));
}
