import type { RunMotion } from './run-motion.ts';
import { bentMm, type SpotWay, turnsAbout } from './spot-way.ts';

/**
 * The way a run passes one spot, in straight pieces and in order, as far as they lie near: the cell and the slice
 * of the run each lies in, where in the slice the piece starts and how much of it it is, and the distance to the
 * spot where it starts and ends. Filled anew for every spot; the lists only grow.
 */
export interface SpotTrail {
  count: number;
  cell: Int32Array;
  slice: Int32Array;
  start: Float64Array;
  part: Float64Array;
  fromMm: Float64Array;
  toMm: Float64Array;
}

/**
 * An empty trail, to be filled again and again.
 * @example
 * emptyTrail().count // => 0
 */
export function emptyTrail(): SpotTrail {
  return {
    count: 0,
    cell: new Int32Array(0),
    slice: new Int32Array(0),
    start: new Float64Array(0),
    part: new Float64Array(0),
    fromMm: new Float64Array(0),
    toMm: new Float64Array(0),
  };
}

/** A cell is cut into four pieces at most, and each of them by an area's border once. */
const mostPiecesOfCell = 8;

/** What of a run's motion a trail needs: where its slices lie. */
export type RunSlices = Pick<RunMotion, 'sliceCount' | 'firstSlice' | 'start' | 'share' | 'spanOf'>;

/**
 * Fills a trail with the pieces of a run's way past a spot that come within reach: a half cell is one piece, or two
 * where the way turns about the spot. `reachMm` has the reach in each span, none farther than the way was measured.
 * O(cells of the way).
 * @example
 * fillTrail(emptyTrail(), { firstCell: [0], cells: [1], distancesMm: [4, 5, 6], quartersMm: [] }, { sliceCount: 2, firstSlice: [0, 1, 2], spanOf: [0, 0], start: [0, 0], share: [1, 1] }, [9]) // => undefined
 */
export function fillTrail(
  trail: SpotTrail,
  {
    firstCell,
    cells,
    distancesMm,
    quartersMm,
  }: Pick<SpotWay, 'firstCell' | 'cells' | 'distancesMm' | 'quartersMm'>,
  slices: RunSlices,
  reachMm: ArrayLike<number>,
): void {
  makeRoom(trail, mostPiecesOfCell * slices.sliceCount);
  trail.count = 0;
  const { firstSlice, spanOf } = slices;
  let at = 0;
  let quarter = 0;
  for (let row = 0; row < cells.length; row++) {
    const end = (firstCell[row] as number) + (cells[row] as number);
    for (let cell = firstCell[row] as number; cell < end; cell++, at += 2) {
      const startMm = distancesMm[at] as number;
      const middleMm = distancesMm[at + 1] as number;
      const endMm = distancesMm[at + 2] as number;
      const half = 2 * cell;
      if (turnsAbout(startMm, middleMm, endMm)) {
        putBent(trail, slices, reachMm, half, startMm, quartersMm[quarter] as number, middleMm);
        putBent(trail, slices, reachMm, half + 1, middleMm, quartersMm[quarter + 1] as number, endMm);
        quarter += 2;
        continue;
      }
      const belowMm = (startMm - 2 * middleMm + endMm) / 12;
      const first = firstSlice[half] as number;
      if ((firstSlice[half + 2] as number) - first === 2 && startMm > bentMm && endMm > bentMm) {
        // Nearly every cell: outside any area, and no span ends in it.
        const twiceMostMm = 2 * (reachMm[spanOf[first] as number] as number);
        const nearMm = middleMm - belowMm;
        if (startMm - belowMm + nearMm <= twiceMostMm) {
          const n = trail.count++;
          trail.cell[n] = cell;
          trail.slice[n] = first;
          trail.start[n] = 0;
          trail.part[n] = 1;
          trail.fromMm[n] = startMm - belowMm;
          trail.toMm[n] = nearMm;
        }
        if (nearMm + endMm - belowMm <= twiceMostMm) {
          const n = trail.count++;
          trail.cell[n] = cell;
          trail.slice[n] = first + 1;
          trail.start[n] = 0;
          trail.part[n] = 1;
          trail.fromMm[n] = nearMm;
          trail.toMm[n] = endMm - belowMm;
        }
        continue;
      }
      putHalf(trail, slices, reachMm, half, 0, 1, startMm - belowMm, middleMm - belowMm);
      putHalf(trail, slices, reachMm, half + 1, 0, 1, middleMm - belowMm, endMm - belowMm);
    }
    at++;
  }
}

function makeRoom(trail: SpotTrail, room: number): void {
  if (trail.slice.length >= room) return;
  trail.cell = new Int32Array(room);
  trail.slice = new Int32Array(room);
  trail.start = new Float64Array(room);
  trail.part = new Float64Array(room);
  trail.fromMm = new Float64Array(room);
  trail.toMm = new Float64Array(room);
}

/**
 * Puts a half cell as two pieces. Between three places the distance is taken to run along a parabola: its mean
 * over either piece lies a twelfth of the second difference below the chord.
 */
function putBent(
  trail: SpotTrail,
  slices: RunSlices,
  reachMm: ArrayLike<number>,
  half: number,
  fromMm: number,
  middleMm: number,
  toMm: number,
): void {
  const belowMm = (fromMm - 2 * middleMm + toMm) / 12;
  putHalf(trail, slices, reachMm, half, 0, 0.5, fromMm - belowMm, middleMm - belowMm);
  putHalf(trail, slices, reachMm, half, 0.5, 0.5, middleMm - belowMm, toMm - belowMm);
}

/** Puts one piece of a half cell, cut where its slices end. */
function putHalf(
  trail: SpotTrail,
  { firstSlice, start, share, spanOf }: RunSlices,
  reachMm: ArrayLike<number>,
  half: number,
  at: number,
  part: number,
  fromMm: number,
  toMm: number,
): void {
  const first = firstSlice[half] as number;
  const end = firstSlice[half + 1] as number;
  if (end - first === 1) {
    putCut(trail, half >> 1, first, at, part, fromMm, toMm, reachMm[spanOf[first] as number] as number);
    return;
  }
  const slope = (toMm - fromMm) / part;
  for (let slice = first; slice < end; slice++) {
    const sliceAt = start[slice] as number;
    const long = share[slice] as number;
    const from = Math.max(at, sliceAt);
    const to = Math.min(at + part, sliceAt + long);
    if (to <= from) continue;
    const [nearMm, farMm] = [fromMm + slope * (from - at), fromMm + slope * (to - at)];
    const mostMm = reachMm[spanOf[slice] as number] as number;
    putCut(trail, half >> 1, slice, (from - sliceAt) / long, (to - from) / long, nearMm, farMm, mostMm);
  }
}

/** Puts a piece, cut at the border of an area: inside it everything is as near as can be, zero. */
function putCut(
  trail: SpotTrail,
  cell: number,
  slice: number,
  start: number,
  part: number,
  fromMm: number,
  toMm: number,
  mostMm: number,
): void {
  if (fromMm < 0 !== toMm < 0) {
    const cut = (part * fromMm) / (fromMm - toMm);
    if (cut > 0 && cut < part) {
      putPiece(trail, cell, slice, start, cut, Math.max(0, fromMm), 0, mostMm);
      putPiece(trail, cell, slice, start + cut, part - cut, 0, Math.max(0, toMm), mostMm);
      return;
    }
  }
  putPiece(trail, cell, slice, start, part, Math.max(0, fromMm), Math.max(0, toMm), mostMm);
}

function putPiece(
  trail: SpotTrail,
  cell: number,
  slice: number,
  start: number,
  part: number,
  fromMm: number,
  toMm: number,
  mostMm: number,
): void {
  if (fromMm + toMm > 2 * mostMm) return;
  const n = trail.count++;
  trail.cell[n] = cell;
  trail.slice[n] = slice;
  trail.start[n] = start;
  trail.part[n] = part;
  trail.fromMm[n] = fromMm;
  trail.toMm[n] = toMm;
}
