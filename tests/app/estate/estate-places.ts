import { smoothLine } from '#core/geometry/smooth-line.ts';
import { pointAtStation, type StationLine, stationLine } from '#core/geometry/station-line.ts';
import type { Place } from '../drawing-hand.ts';
import { type DrawnPart, estateParts } from './part-table.ts';
import { type DrawnRun, estateRuns } from './run-table.ts';

/** The part of a name. */
export const partNamed = (name: string): DrawnPart => {
  const part = estateParts.find((each) => each.name === name);
  if (!part) throw new Error(`no part ${name}`);
  return part;
};

/** Where something lies seen from above. */
export const planOf = ([xMm, yMm]: readonly number[]): Place => [xMm as number, yMm as number];
/** The places a run is pressed through, from its first part to its last. */
export const wayOf = (run: DrawnRun): readonly Place[] =>
  [partNamed(run.from).at, ...run.bends, partNamed(run.to).at].map(planOf);

/** A run's line as drawn on the board. */
function lineOf(name: string): StationLine {
  const run = estateRuns.find((each) => each.name === name);
  if (!run) throw new Error(`no run ${name}`);
  const corners = [partNamed(run.from).at, ...run.bends, partNamed(run.to).at];
  return stationLine(smoothLine(corners.map(([xMm, yMm, zMm]) => ({ xMm, yMm, zMm }))));
}

/** The place at a station of a run, as the board shows it. */
export function placeOn(name: string, stationMm: number): Place {
  const { xMm, yMm } = pointAtStation(lineOf(name), stationMm);
  return [xMm, yMm];
}
