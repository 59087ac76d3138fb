import type { RunContext } from './run-context.ts';
import { type CellWindow, smoothCells } from './smooth-cells.ts';

/**
 * Hazard gathered at one station, spread by the doubt of where it is. `mass` is per hour.
 * @example
 * placeMass(runContext(sample.segment, runSurroundings(sample.map, sample.segment, defaultAssumptions), defaultAssumptions), 250, 1).perMm.length // => 17
 */
export function placeMass(run: RunContext, stationMm: number, mass: number): CellWindow {
  const cell = cellAt(run, stationMm);
  const raw = { firstCell: cell, perMm: [mass / run.cellMm] };
  return smoothCells(raw, run.bell, run.cellCount);
}

/**
 * The cell of a run that holds a station; stations off either end give the end cell.
 * @example
 * cellAt(runContext(sample.segment, runSurroundings(sample.map, sample.segment, defaultAssumptions), defaultAssumptions), 255) // => 25
 */
export function cellAt(
  run: { readonly cellMm: number; readonly cellCount: number },
  stationMm: number,
): number {
  return Math.min(run.cellCount - 1, Math.max(0, Math.floor(stationMm / run.cellMm)));
}
