import type { Segment } from '../map/records.ts';
import { wireLengthMm } from '../map/segment-line.ts';
import { samePlaceMm } from '../quantity/tolerance.ts';
import { wallStrokes } from '../wire/wall-strokes.ts';
import type { Wire } from '../wire/wire-shape.ts';
import { type TightBend, tightBendsOf } from './bends-of-run.ts';
import { type BundleThrough, bundleWith, weakestWire } from './bundle-through.ts';
import type { CauseFigures, CauseKind } from './cause.ts';
import type { ChafeAssumptions } from './chafe-assumptions.ts';
import type { RunSurroundings } from './run-surroundings.ts';
import { type Span, spanIndexAt, spansOfRun } from './span.ts';
import { wearAlong } from './wear-along.ts';

/** Everything the mechanisms need to know of one run, worked out once. */
export interface RunContext {
  readonly segment: Segment;
  readonly around: RunSurroundings;
  readonly lengthMm: number;
  readonly through: BundleThrough;
  readonly wire: Wire;
  readonly assumptions: ChafeAssumptions;
  readonly cellCount: number;
  readonly cellMm: number;
  readonly spans: readonly Span[];
  /** Needle strokes its wall stands, heat and water allowed for. */
  readonly strokes: number;
  /** 1 / capacity of wall and cover at every border of the cells, 1/(N mm): large where copper shows soon. */
  readonly wear: ArrayLike<number>;
  readonly tightBends: readonly TightBend[];
}

/**
 * Gathers what the mechanisms need of a run. `searched` is the wire under search, else the weakest traced
 * through the run.
 * @example
 * runContext(sample.middle, runSurroundings(sample.map, sample.middle, defaultAssumptions), defaultAssumptions).cellCount // => 50
 */
export function runContext(
  segment: Segment,
  around: RunSurroundings,
  assumptions: ChafeAssumptions,
  searched: Wire | null = null,
): RunContext {
  const { line } = around.shape;
  const { lengthMm } = line;
  const through = bundleWith(around.circuits, segment.bundleDiameterMm);
  const { diameterMm } = through.bundle;
  const wire = searched ?? weakestWire(around.circuits);
  const hot = segment.traits.includes('hot') ? assumptions.hotFactor : 1;
  const wet = segment.traits.includes('wet') ? assumptions.wetFactor : 1;
  const strokes = wallStrokes(wire) / (hot * wet);
  const longestMm = Math.max(lengthMm, wireLengthMm(segment, lengthMm));
  // A hair less, so that 500 mm rounded up in the last digit still makes 50 cells.
  const cellCount = Math.max(1, Math.ceil(longestMm / assumptions.longestCellMm - 1e-9));
  const cellMm = lengthMm / cellCount;
  const spans = spansOfRun(segment, around, through.bundle, assumptions);
  const tightBends = segment.bends.length > 0 ? tightBendsOf(line, diameterMm, assumptions) : [];
  const wear = wearAlong(segment, around, strokes, cellCount, tightBends, diameterMm, assumptions);
  return {
    segment,
    around,
    lengthMm,
    through,
    wire,
    assumptions,
    cellCount,
    cellMm,
    spans,
    strokes,
    wear,
    tightBends,
  };
}

/**
 * The figures of the span at a station that a sentence about a cause may need.
 * @example
 * spanFigures(runContext(sample.segment, runSurroundings(sample.map, sample.segment, defaultAssumptions), defaultAssumptions), 250).spanMm // => 300
 */
export function spanFigures(run: RunContext, stationMm: number): CauseFigures {
  const span = run.spans[spanIndexAt(run.spans, stationMm)] as Span;
  const held = spanHeld(run, span);
  return {
    ...held,
    ...(held.spanMm === undefined ? {} : { sagMm: span.drive.hangMm }),
    covering: run.segment.covering,
    ...(span.missingClips > 0 ? { missingClips: span.missingClips } : {}),
  };
}

/**
 * What holds a span, as a person would say it. A free end is worked out as the middle of a span twice as long,
 * which nobody can measure on the car.
 * @example
 * spanHeld({ around: { beyondFrom: [], beyondTo: [{}] }, lengthMm: 500 }, { fromMm: -300, toMm: 300, drive: { spanMm: 600 } }) // => { freeMm: 300 }
 */
export function spanHeld(
  { around, lengthMm }: SpanPlace,
  {
    fromMm,
    toMm,
    drive,
  }: { readonly fromMm: number; readonly toMm: number; readonly drive: { readonly spanMm: number } },
): Pick<CauseFigures, 'spanMm' | 'beyondRun' | 'freeMm' | 'unheld'> {
  const freeBefore = fromMm < 0 && around.beyondFrom.length === 0;
  const freeAfter = toMm > lengthMm && around.beyondTo.length === 0;
  if (freeBefore && freeAfter) return { unheld: true };
  if (freeBefore || freeAfter) return { freeMm: drive.spanMm / 2 };
  const longer = drive.spanMm > lengthMm + samePlaceMm;
  return { spanMm: drive.spanMm, ...(longer ? { beyondRun: true } : {}) };
}

interface SpanPlace {
  readonly lengthMm: number;
  readonly around: { readonly beyondFrom: readonly unknown[]; readonly beyondTo: readonly unknown[] };
}

/**
 * What past jobs taught about a cause, as a factor.
 * @example
 * causeFactor({ assumptions: defaultAssumptions }, 'wet') // => 1
 */
export function causeFactor(run: { readonly assumptions: ChafeAssumptions }, cause: CauseKind): number {
  return run.assumptions.causeFactor[cause] ?? 1;
}
