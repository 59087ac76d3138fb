import type { RunMotion } from './run-motion.ts';
import type { RunPlaces } from './run-places.ts';
import { type SpotForm, signedSpotMm } from './spot-form.ts';

/**
 * The way a run passes one spot, in straight pieces and in order: the slice of the run each lies in, where in it
 * the piece starts and how much of it it is, and the distance to the spot where it starts and ends. Filled anew
 * for every spot; the lists only grow.
 */
export interface SpotTrail {
  count: number;
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
    slice: new Int32Array(0),
    start: new Float64Array(0),
    part: new Float64Array(0),
    fromMm: new Float64Array(0),
    toMm: new Float64Array(0),
  };
}

/** Where a cell turns about a spot more than this, its halves are halved once more. */
const bentMm = 0.5;
/** Pieces of a cell that no span ends in. */
const mostPiecesOfCell = 8;

/** What of a run's motion a trail needs: where its slices lie. */
export type RunSlices = Pick<RunMotion, 'sliceCount' | 'firstSlice' | 'start' | 'share' | 'spanOf'>;

/**
 * Fills a trail with the pieces of a run within reach of a spot; `reachMm` has the reach in each span. How finely
 * a cell is cut depends on the drawing alone, never on clearances or motion, so that changing those moves every
 * place's hazard one way. Cells that a step from the last one cannot bring into reach are jumped. `places` are
 * half a cell apart. O(cells within reach x corners).
 * @example
 * fillTrail(emptyTrail(), spotForm(sample.rubSpot), placesAlong(sample.line.spans[0].line, 2), 1, 500, false, { sliceCount: 2, firstSlice: [0, 1, 2], spanOf: [0, 0], start: [0, 0], share: [1, 1] }, [200]) // => undefined
 */
export function fillTrail(
  trail: SpotTrail,
  form: SpotForm,
  places: RunPlaces,
  cellCount: number,
  cellMm: number,
  inSpace: boolean,
  slices: RunSlices,
  reachMm: ArrayLike<number>,
): void {
  const { firstSlice, spanOf } = slices;
  makeRoom(trail, mostPiecesOfCell * slices.sliceCount);
  trail.count = 0;
  let cell = 0;
  let startMm = -1;
  // Known where the last cell looked at ends.
  let known = false;
  while (cell < cellCount) {
    if (!known) startMm = distanceAt(form, places, 2 * cell, inSpace);
    const last = lastSpan(slices, cell);
    let mostMm = reachMm[last] as number;
    for (let span = spanOf[firstSlice[2 * cell] as number] as number; span < last; span++) {
      mostMm = Math.max(mostMm, reachMm[span] as number);
    }
    if (startMm > mostMm + cellMm) {
      const farthest = cell + Math.floor((startMm - mostMm) / cellMm);
      cell++;
      while (cell < farthest && cell < cellCount && lastSpan(slices, cell) === last) cell++;
      known = false;
      continue;
    }
    const middleMm = distanceAt(form, places, 2 * cell + 1, inSpace);
    const endMm = distanceAt(form, places, 2 * cell + 2, inSpace);
    const half = 2 * cell;
    if (Math.abs(startMm - 2 * middleMm + endMm) <= bentMm) {
      const belowMm = (startMm - 2 * middleMm + endMm) / 12;
      putHalf(trail, slices, half, 0, 1, startMm - belowMm, middleMm - belowMm);
      putHalf(trail, slices, half + 1, 0, 1, middleMm - belowMm, endMm - belowMm);
    } else {
      putBent(trail, slices, half, startMm, distanceBetween(form, places, half, inSpace), middleMm);
      putBent(trail, slices, half + 1, middleMm, distanceBetween(form, places, half + 1, inSpace), endMm);
    }
    startMm = endMm;
    known = true;
    cell++;
  }
}

const lastSpan = ({ firstSlice, spanOf }: RunSlices, cell: number) =>
  spanOf[(firstSlice[2 * cell + 2] as number) - 1] as number;

function makeRoom(trail: SpotTrail, room: number): void {
  if (trail.slice.length >= room) return;
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
  half: number,
  fromMm: number,
  middleMm: number,
  toMm: number,
): void {
  const belowMm = (fromMm - 2 * middleMm + toMm) / 12;
  putHalf(trail, slices, half, 0, 0.5, fromMm - belowMm, middleMm - belowMm);
  putHalf(trail, slices, half, 0.5, 0.5, middleMm - belowMm, toMm - belowMm);
}

/** Puts one piece of a half cell, cut where its slices end and at the border of an area. */
function putHalf(
  trail: SpotTrail,
  { firstSlice, start, share }: RunSlices,
  half: number,
  at: number,
  part: number,
  fromMm: number,
  toMm: number,
): void {
  const first = firstSlice[half] as number;
  const end = firstSlice[half + 1] as number;
  if (end - first === 1) {
    putPiece(trail, first, at, part, fromMm, toMm);
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
    putPiece(trail, slice, (from - sliceAt) / long, (to - from) / long, nearMm, farMm);
  }
}

/** Inside an area everything is as near as can be: zero. */
function putPiece(
  trail: SpotTrail,
  slice: number,
  start: number,
  part: number,
  fromMm: number,
  toMm: number,
): void {
  if (fromMm < 0 !== toMm < 0) {
    const cut = (part * fromMm) / (fromMm - toMm);
    if (cut > 0 && cut < part) {
      putPiece(trail, slice, start, cut, fromMm, 0);
      putPiece(trail, slice, start + cut, part - cut, 0, toMm);
      return;
    }
  }
  const n = trail.count++;
  trail.slice[n] = slice;
  trail.start[n] = start;
  trail.part[n] = part;
  trail.fromMm[n] = fromMm > 0 ? fromMm : 0;
  trail.toMm[n] = toMm > 0 ? toMm : 0;
}

function distanceAt(form: SpotForm, { xMm, yMm, zMm }: RunPlaces, step: number, inSpace: boolean): number {
  return signedSpotMm(form, xMm[step] as number, yMm[step] as number, zMm[step] as number, inSpace);
}

/** Distance from the middle between two places. */
function distanceBetween(form: SpotForm, { xMm, yMm, zMm }: RunPlaces, i: number, inSpace: boolean): number {
  const x = ((xMm[i] as number) + (xMm[i + 1] as number)) / 2;
  const y = ((yMm[i] as number) + (yMm[i + 1] as number)) / 2;
  const z = ((zMm[i] as number) + (zMm[i + 1] as number)) / 2;
  return signedSpotMm(form, x, y, z, inSpace);
}
