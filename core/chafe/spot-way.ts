import type { RunPlaces } from './run-places.ts';
import { type SpotForm, signedSpotMm } from './spot-form.ts';

/**
 * The way a run passes one spot: the distance to it at the borders and the middle of every cell that comes near.
 * It rests on the drawing alone, never on clips, clearances or motion, so that changing those moves every place's
 * hazard one way, and so that it can be kept.
 */
export interface SpotWay {
  readonly cellCount: number;
  /** Nothing nearer than this is left out. */
  readonly reachMm: number;
  /** Cells one after another that come near: their first, and how many. */
  readonly firstCell: Int32Array;
  readonly cells: Int32Array;
  /** For each such row of n cells the 2 n + 1 signed distances at every half cell from its start to its end. */
  readonly distancesMm: Float64Array;
  /** For each cell that turns about the spot, in order, the distances a quarter and three quarters along it. */
  readonly quartersMm: Float64Array;
}

/** Where a cell turns about a spot more than this, its halves are halved once more. */
export const bentMm = 0.5;

/**
 * Whether a cell turns about a spot so much that its quarters are measured too.
 * @example
 * turnsAbout(12, 10, 12) // => true
 */
export function turnsAbout(startMm: number, middleMm: number, endMm: number): boolean {
  const bendMm = startMm - 2 * middleMm + endMm;
  return bendMm > bentMm || bendMm < -bentMm;
}

/**
 * The cell that comes nearest to the spot with either of its halves, the first of several; -1 when none comes near.
 * @example
 * nearestCell({ firstCell: [3], cells: [2], distancesMm: [9, 8, 7, 6, 7] }) // => 4
 */
export function nearestCell({
  firstCell,
  cells,
  distancesMm,
}: Pick<SpotWay, 'firstCell' | 'cells' | 'distancesMm'>): number {
  let found = -1;
  let nearestMm = Number.POSITIVE_INFINITY;
  let at = 0;
  const off = (i: number) => Math.max(0, distancesMm[i] as number);
  cells.forEach((count, row) => {
    for (let i = 0; i < count; i++, at += 2) {
      const twiceMm = off(at + 1) + Math.min(off(at), off(at + 2));
      if (twiceMm >= nearestMm) continue;
      nearestMm = twiceMm;
      found = (firstCell[row] as number) + i;
    }
    at++;
  });
  return found;
}

/** Filled anew for every way. */
const room = {
  distancesMm: new Float64Array(0),
  quartersMm: new Float64Array(0),
};

/**
 * Measures the way of a run past a spot as far as it lies within reach. Cells that a step from the last one cannot
 * bring there are jumped. `places` are half a cell apart. O(cells within reach x corners).
 * @example
 * spotWay(spotForm(sample.rubSpot, false), placesAlong(sample.line.spans[0].line, 20), 10, 50, 270).cells[0] // => 1
 */
export function spotWay(
  form: SpotForm,
  places: RunPlaces,
  cellCount: number,
  cellMm: number,
  reachMm: number,
): SpotWay {
  if (room.quartersMm.length < 2 * cellCount) {
    room.distancesMm = new Float64Array(6 * cellCount);
    room.quartersMm = new Float64Array(4 * cellCount);
  }
  const { distancesMm, quartersMm } = room;
  const firstCells: number[] = [];
  const rows: number[] = [];
  let measured = 0;
  let quarters = 0;
  let cell = 0;
  while (cell < cellCount) {
    let startMm = distanceAt(form, places, 2 * cell);
    if (startMm > reachMm + cellMm) {
      cell += Math.max(1, Math.floor((startMm - reachMm) / cellMm));
      continue;
    }
    const first = cell;
    distancesMm[measured++] = startMm;
    while (cell < cellCount && startMm <= reachMm + cellMm) {
      const middleMm = distanceAt(form, places, 2 * cell + 1);
      const endMm = distanceAt(form, places, 2 * cell + 2);
      if (turnsAbout(startMm, middleMm, endMm)) {
        quartersMm[quarters++] = distanceBetween(form, places, 2 * cell);
        quartersMm[quarters++] = distanceBetween(form, places, 2 * cell + 1);
      }
      distancesMm[measured++] = middleMm;
      distancesMm[measured++] = endMm;
      startMm = endMm;
      cell++;
    }
    firstCells.push(first);
    rows.push(cell - first);
  }
  return {
    cellCount,
    reachMm,
    firstCell: Int32Array.from(firstCells),
    cells: Int32Array.from(rows),
    distancesMm: distancesMm.slice(0, measured),
    quartersMm: quartersMm.slice(0, quarters),
  };
}

function distanceAt(form: SpotForm, { xMm, yMm, zMm }: RunPlaces, step: number): number {
  return signedSpotMm(form, xMm[step] as number, yMm[step] as number, zMm[step] as number);
}

/** Distance from the middle between two places. */
function distanceBetween(form: SpotForm, { xMm, yMm, zMm }: RunPlaces, i: number): number {
  const x = ((xMm[i] as number) + (xMm[i + 1] as number)) / 2;
  const y = ((yMm[i] as number) + (yMm[i + 1] as number)) / 2;
  const z = ((zMm[i] as number) + (zMm[i + 1] as number)) / 2;
  return signedSpotMm(form, x, y, z);
}
