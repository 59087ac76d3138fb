import type { ChafeAssumptions } from './chafe-assumptions.ts';
import type { RunContext } from './run-context.ts';
import type { Span, Swing } from './span.ts';

/** Swings a span may make: with its clips, with the one at its start gone, with the one at its end gone. */
export const swingsOfSpan = 3;

/**
 * How a run moves. The halves of its cells are cut into slices where a span ends inside them, so that a slice
 * belongs to one span; swing `k` of slice `s` stands at `swingsOfSpan * s + k`, and one the span cannot make
 * has no worth. Swing `k` of span `i` stands at `swingsOfSpan * i + k`.
 */
export interface RunMotion {
  readonly sliceCount: number;
  /** First slice of each half cell, and one more: the number of slices. */
  readonly firstSlice: Int32Array;
  /** The half cell a slice lies in. */
  readonly halfOf: Int32Array;
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
  /** Of each swing of each span: one-sigma motion at mid-span, how far it strays to a side there, and sags. */
  readonly swings: SwingFigures;
}

/** The figures of every swing of every span of a run, side by side; a swing that cannot be has sigma -1. */
export interface SwingFigures {
  readonly sigmaMm: Float64Array;
  readonly slackMm: Float64Array;
  readonly sagMm: Float64Array;
  /** Slip a second for each N that presses, over the drive: what a steady force is worth beside being shaken. */
  readonly slipOverWork: Float64Array;
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
  halfOf = new Int32Array(0);
  spanOf = new Int32Array(0);
  start = new Float64Array(0);
  share = new Float64Array(0);
  sine = new Float64Array(0);
  sineRise = new Float64Array(0);
  worth = new Float64Array(0);
  wear = new Float64Array(0);
  sliceCount = 0;
  swings = roomForSwings(0);
}
const room = new MotionRoom();

function roomForSwings(count: number): SwingFigures {
  return {
    sigmaMm: new Float64Array(count),
    slackMm: new Float64Array(count),
    sagMm: new Float64Array(count),
    slipOverWork: new Float64Array(count),
  };
}

/** What of a run its motion depends on. */
export type MovingRun = Pick<RunContext, 'spans' | 'wear' | 'cellCount' | 'cellMm' | 'assumptions'>;

/** A border nearer to that of a half cell than this share of it makes no slice. */
const leastSlice = 1e-6;

/**
 * The motion of a run. It stays as it is until that of another run is asked for. O(cells) the first time.
 * @example
 * motionOf({ spans: [{ fromMm: 0, toMm: 20, drive: { spanMm: 20, work: 1 }, ifFromGone: null, ifToGone: null }], wear: [1, 1], cellCount: 1, cellMm: 20, assumptions: defaultAssumptions }).sliceCount // => 2
 */
export function motionOf(run: MovingRun): RunMotion {
  if (room.run === run) return room;
  room.run = run;
  const { spans, cellCount, cellMm, assumptions } = run;
  const halves = 2 * cellCount;
  makeRoom(halves, halves + 2 * spans.length, swingsOfSpan * spans.length);
  const halfMm = cellMm / 2;
  let slice = 0;
  // In half cells from the run's start.
  let fromHalf = 0;
  for (let index = 0; index < spans.length; index++) {
    const span = spans[index] as Span;
    // The last span goes on for ever.
    const toHalf = index < spans.length - 1 ? wholeIfNear(Math.min(halves, span.toMm / halfMm)) : halves;
    const first = slice;
    if (toHalf > fromHalf) {
      slice = cutSpan(run, index, first, fromHalf, toHalf);
      fromHalf = toHalf;
    }
    for (let k = 0; k < swingsOfSpan; k++) {
      const swing = swingOf(span, k);
      keepFigures(swing, swingsOfSpan * index + k);
      if (slice === first) continue;
      if (swing) addSwing(swing, swingChance(span, k, assumptions), k, first, slice, halfMm, assumptions);
      else for (let s = first; s < slice; s++) room.worth[swingsOfSpan * s + k] = 0;
    }
  }
  room.firstSlice[halves] = slice;
  // Past the end everything lies farther on, so that a cell can be looked up.
  room.firstSlice[halves + 1] = 0x7fffffff;
  room.firstSlice[halves + 2] = 0x7fffffff;
  room.sliceCount = slice;
  return room;
}

function wholeIfNear(half: number): number {
  const whole = Math.round(half);
  return Math.abs(half - whole) < leastSlice ? whole : half;
}

function makeRoom(halves: number, slices: number, swings: number): void {
  if (room.firstSlice.length < halves + 3) room.firstSlice = new Int32Array(2 * halves + 3);
  if (room.swings.sigmaMm.length < swings) room.swings = roomForSwings(2 * swings);
  if (room.spanOf.length >= slices) return;
  const most = 2 * slices;
  room.halfOf = new Int32Array(most);
  room.spanOf = new Int32Array(most);
  room.start = new Float64Array(most);
  room.share = new Float64Array(most);
  room.wear = new Float64Array(most);
  room.sine = new Float64Array(swingsOfSpan * most);
  room.sineRise = new Float64Array(swingsOfSpan * most);
  room.worth = new Float64Array(swingsOfSpan * most);
}

/** Cuts one span's part of a run into slices; answers how many there are by then. */
function cutSpan({ wear }: MovingRun, span: number, first: number, fromHalf: number, toHalf: number): number {
  const { firstSlice, halfOf, spanOf, start, share, wear: wearOf } = room;
  let slice = first;
  let from = fromHalf;
  while (from < toHalf) {
    const half = Math.floor(from);
    const to = Math.min(half + 1, toHalf);
    const cell = half >> 1;
    const here = wear[cell] as number;
    const rise = (wear[cell + 1] as number) - here;
    if (from === half) firstSlice[half] = slice;
    halfOf[slice] = half;
    spanOf[slice] = span;
    start[slice] = from - half;
    share[slice] = to - from;
    wearOf[slice] = here + rise * ((from + to) / 4 - cell);
    slice++;
    from = to;
  }
  return slice;
}

function keepFigures(swing: Swing | null, at: number): void {
  const { sigmaMm, slackMm, sagMm, slipOverWork } = room.swings;
  if (!swing) {
    sigmaMm[at] = -1;
    return;
  }
  const { drive } = swing;
  sigmaMm[at] = drive.sigmaMm;
  slackMm[at] = drive.slackReachMm;
  sagMm[at] = drive.sagMm;
  slipOverWork[at] = (4 * drive.hz * drive.motionMm) / drive.work;
}

/**
 * Fills in one swing over the slices of its span. All but the first and the last are whole half cells, from one to
 * the next of which the swing's angle grows by one step, so that its sine and cosine are turned on rather than
 * worked out anew.
 */
function addSwing(
  swing: Swing,
  chance: number,
  k: number,
  first: number,
  end: number,
  halfMm: number,
  { motionAtClip }: ChafeAssumptions,
): void {
  const { sine, sineRise, worth, wear } = room;
  addSlice(swing, chance, k, first, halfMm, motionAtClip);
  if (end - first > 1) addSlice(swing, chance, k, end - 1, halfMm, motionAtClip);
  if (end - first < 3) return;
  addSlice(swing, chance, k, first + 1, halfMm, motionAtClip);
  const turn = (Math.PI * halfMm) / swing.drive.spanMm;
  const sinc = meanSine(turn / 2);
  const double = meanSine(turn);
  const [stepSine, stepCosine] = [Math.sin(turn), Math.cos(turn)];
  const moving = 1 - motionAtClip;
  const most = chance * swing.drive.work;
  const evenly = most * (motionAtClip * motionAtClip + ((1 - double) * moving * moving) / 2);
  const byHeight = most * 2 * motionAtClip * moving * sinc;
  const bySquare = most * moving * moving * double;
  const at = swingsOfSpan * (first + 1) + k;
  let height = (sine[at] as number) / sinc;
  let slope = (sineRise[at] as number) / turn;
  for (let s = first + 2; s < end - 1; s++) {
    const before = height;
    height = before * stepCosine + slope * stepSine;
    slope = slope * stepCosine - before * stepSine;
    const to = swingsOfSpan * s + k;
    sine[to] = height * sinc;
    sineRise[to] = slope * turn;
    worth[to] = (evenly + height * (byHeight + height * bySquare)) * (wear[s] as number);
  }
}

/** Means of a sine and of its square over a stretch, against their middle: sinc of the angle it spans. */
function addSlice(
  { fromMm, drive }: Swing,
  chance: number,
  k: number,
  slice: number,
  halfMm: number,
  motionAtClip: number,
): void {
  const part = room.share[slice] as number;
  const middle = (room.halfOf[slice] as number) + (room.start[slice] as number) + part / 2;
  const angle = (Math.PI * (middle * halfMm - fromMm)) / drive.spanMm;
  const turn = (Math.PI * halfMm * part) / drive.spanMm;
  const height = Math.max(0, Math.sin(angle));
  const mean = height * meanSine(turn / 2);
  const square = (1 - (1 - 2 * height * height) * meanSine(turn)) / 2;
  const moving = 1 - motionAtClip;
  const shapeSquare =
    motionAtClip * motionAtClip + 2 * motionAtClip * moving * mean + moving * moving * square;
  const at = swingsOfSpan * slice + k;
  room.sine[at] = mean;
  room.sineRise[at] = Math.cos(angle) * turn;
  room.worth[at] = chance * drive.work * shapeSquare * (room.wear[slice] as number);
}

const meanSine = (angle: number) => (angle > 1e-9 ? Math.sin(angle) / angle : 1);
