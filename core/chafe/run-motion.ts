import type { ChafeAssumptions } from './chafe-assumptions.ts';
import { halfSine } from './half-sine.ts';
import type { RunContext } from './run-context.ts';
import type { Span, Swing } from './span.ts';

/** Swings a span may make: with its clips, with the one at its start gone, with the one at its end gone. */
export const swingsOfSpan = 3;

/**
 * How a run moves. The halves of its cells are cut into slices where a span ends inside them, so that a slice
 * belongs to one span; swing `k` of slice `s` stands at `swingsOfSpan * s + k`, and one the span cannot make
 * has no worth.
 */
export interface RunMotion {
  readonly sliceCount: number;
  /** First slice of each half cell, and one more: the number of slices. */
  readonly firstSlice: Int32Array;
  /** Where a slice starts and how much of it there is, as shares of its half cell. */
  readonly start: Float64Array;
  readonly share: Float64Array;
  /** Index of the span a slice lies in. */
  readonly spanOf: Int32Array;
  /** Mean height of the swing's half-sine over the slice, and how much it rises over it. */
  readonly sine: Float64Array;
  readonly sineRise: Float64Array;
  /** Mean over the slice of drive times shape squared times wear, times the chance that the span swings so. */
  readonly worth: Float64Array;
  /** Wear in the middle of the slice. */
  readonly wear: Float64Array;
}

/**
 * One of the swings of a span; null where it has no such one.
 * @example
 * swingOf({ ifFromGone: null }, 1) // => null
 */
export function swingOf(span: Span, k: number): Swing | null {
  return k === 0 ? span : k === 1 ? span.ifFromGone : span.ifToGone;
}

/**
 * Chance that a span swings with its clips in place, the one at its start gone, or the one at its end.
 * @example
 * swingChance({ ifFromGone: null, ifToGone: null }, 0, defaultAssumptions) // => 1
 */
export function swingChance(
  { ifFromGone, ifToGone }: Pick<Span, 'ifFromGone' | 'ifToGone'>,
  k: number,
  { clipGoneShare }: Pick<ChafeAssumptions, 'clipGoneShare'>,
): number {
  const either = clipGoneShare / 2;
  if (k === 1) return ifFromGone ? either : 0;
  if (k === 2) return ifToGone ? either : 0;
  return 1 - (ifFromGone ? either : 0) - (ifToGone ? either : 0);
}

/** Room for the motion of one run, filled again for the next: it is asked for several times for one run. */
class MotionRoom implements RunMotion {
  run: MovingRun | null = null;
  firstSlice = new Int32Array(0);
  spanOf = new Int32Array(0);
  start = new Float64Array(0);
  share = new Float64Array(0);
  sine = new Float64Array(0);
  sineRise = new Float64Array(0);
  worth = new Float64Array(0);
  wear = new Float64Array(0);
  sliceCount = 0;
}
const room = new MotionRoom();

/** What of a run its motion depends on. */
export type MovingRun = Pick<RunContext, 'spans' | 'wear' | 'cellCount' | 'cellMm' | 'assumptions'>;

/**
 * The motion of a run. It stays as it is until that of another run is asked for. O(cells) the first time.
 * @example
 * motionOf({ spans: [{ fromMm: 0, toMm: 20, drive: { spanMm: 20, work: 1 }, ifFromGone: null, ifToGone: null }], wear: [1, 1], cellCount: 1, cellMm: 20, assumptions: defaultAssumptions }).sliceCount // => 2
 */
export function motionOf(run: MovingRun): RunMotion {
  if (room.run === run) return room;
  room.run = run;
  cutSlices(run);
  const halfMm = run.cellMm / 2;
  const { motionAtClip } = run.assumptions;
  room.worth.fill(0, 0, swingsOfSpan * room.sliceCount);
  let first = 0;
  while (first < room.sliceCount) {
    const index = room.spanOf[first] as number;
    let end = first + 1;
    while (end < room.sliceCount && room.spanOf[end] === index) end++;
    const span = run.spans[index] as Span;
    for (let k = 0; k < swingsOfSpan; k++) {
      const swing = swingOf(span, k);
      const chance = swingChance(span, k, run.assumptions);
      if (swing) addSwing(swing, chance, k, first, end, halfMm, motionAtClip);
    }
    first = end;
  }
  return room;
}

/** A border nearer to that of a half cell than this share of it makes no slice. */
const leastSlice = 1e-6;

function cutSlices({ spans, wear, cellCount, cellMm }: MovingRun): void {
  const halves = 2 * cellCount;
  makeRoom(halves, halves + spans.length);
  const { firstSlice, spanOf, start, share, wear: wearOf } = room;
  const perHalf = 2 / cellMm;
  let slice = 0;
  let index = 0;
  // In half cells from the run's start; the last span goes on for ever.
  let spanEnd = spans.length > 1 ? (spans[0] as Span).toMm * perHalf : Number.POSITIVE_INFINITY;
  for (let h = 0; h < halves; h++) {
    firstSlice[h] = slice;
    const here = wear[h >> 1] as number;
    const rise = (wear[(h >> 1) + 1] as number) - here;
    let from = 0;
    while (from < 1) {
      while (spanEnd - h - from < leastSlice) {
        index++;
        spanEnd = index < spans.length - 1 ? (spans[index] as Span).toMm * perHalf : Number.POSITIVE_INFINITY;
      }
      const to = spanEnd - h < 1 - leastSlice ? spanEnd - h : 1;
      start[slice] = from;
      share[slice] = to - from;
      spanOf[slice] = index;
      wearOf[slice] = here + rise * ((h & 1) / 2 + (from + to) / 4);
      slice++;
      from = to;
    }
  }
  // Past the end everything lies farther on, so that a slice can be looked up.
  firstSlice.fill(slice, halves);
  firstSlice.fill(0x7fffffff, halves + 1);
  room.sliceCount = slice;
}

function makeRoom(halves: number, slices: number): void {
  if (room.firstSlice.length <= halves) room.firstSlice = new Int32Array(2 * halves + 1);
  if (room.spanOf.length >= slices) return;
  const most = 2 * slices;
  room.spanOf = new Int32Array(most);
  room.start = new Float64Array(most);
  room.share = new Float64Array(most);
  room.wear = new Float64Array(most);
  room.sine = new Float64Array(swingsOfSpan * most);
  room.sineRise = new Float64Array(swingsOfSpan * most);
  room.worth = new Float64Array(swingsOfSpan * most);
}

function addSwing(
  { fromMm, drive }: Swing,
  chance: number,
  k: number,
  first: number,
  end: number,
  halfMm: number,
  still: number,
): void {
  const { firstSlice, start, share, sine, sineRise, worth, wear } = room;
  const moving = 1 - still;
  const perMm = 1 / drive.spanMm;
  const most = chance * drive.work;
  // Means of a sine and of its square over half a cell, against their middle: sinc of the angle it spans.
  const wholeTurn = Math.PI * halfMm * perMm;
  const wholeSinc = meanSine(wholeTurn / 2);
  const wholeDouble = meanSine(wholeTurn);
  let h = halfOf(room, first);
  for (let s = first; s < end; s++) {
    while ((firstSlice[h + 1] as number) <= s) h++;
    const part = share[s] as number;
    const along = ((h + (start[s] as number) + part / 2) * halfMm - fromMm) * perMm;
    const height = halfSine(along);
    const turn = part === 1 ? wholeTurn : wholeTurn * part;
    const sinc = part === 1 ? wholeSinc : meanSine(turn / 2);
    const double = part === 1 ? wholeDouble : meanSine(turn);
    const slope = along <= 0 || along >= 1 ? 0 : Math.sqrt(Math.max(0, 1 - height * height)) * turn;
    const square = (1 - (1 - 2 * height * height) * double) / 2;
    const shapeSquare = still * still + 2 * still * moving * height * sinc + moving * moving * square;
    const at = swingsOfSpan * s + k;
    sine[at] = height * sinc;
    sineRise[at] = along < 0.5 ? slope : -slope;
    worth[at] = most * shapeSquare * (wear[s] as number);
  }
}

/**
 * The half cell a slice lies in: at most as many before it as there are slices before it. O(log halves).
 * @example
 * halfOf({ firstSlice: [0, 2, 3] }, 2) // => 1
 */
export function halfOf({ firstSlice }: { readonly firstSlice: ArrayLike<number> }, slice: number): number {
  let low = 0;
  let high = slice;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (middle < firstSlice.length && (firstSlice[middle] as number) <= slice) low = middle;
    else high = middle - 1;
  }
  return low;
}

/**
 * The cell a slice lies in.
 * @example
 * cellOf({ firstSlice: [0, 2, 3, 4, 5] }, 3) // => 1
 */
export function cellOf(motion: { readonly firstSlice: ArrayLike<number> }, slice: number): number {
  return halfOf(motion, slice) >> 1;
}

const meanSine = (angle: number) => (angle > 1e-9 ? Math.sin(angle) / angle : 1);
