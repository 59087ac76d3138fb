import { cornersOf } from '../geometry/bend-radius.ts';
import type { Covering } from '../map/kinds.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { MapNode, Segment } from '../map/records.ts';
import { wireLengthMm } from '../map/segment-line.ts';
import { wallStrokes } from '../wire/wall-strokes.ts';
import type { Wire } from '../wire/wire-shape.ts';
import { type BundleThrough, bundleWith, circuitsThrough, weakestWire } from './bundle-through.ts';
import type { CauseFigures, CauseKind } from './cause.ts';
import type { ChafeAssumptions } from './chafe-assumptions.ts';
import { holdBeyondMm } from './holding.ts';
import { type NearSpot, nearestRunMm, nearSpots } from './near-spots.ts';
import { meanWearRate, type Protection } from './protection.ts';
import { type RunShape, runShape } from './run-shape.ts';
import { runsAtNode } from './runs-at-node.ts';
import { type CellBell, cellBell } from './smooth-cells.ts';
import { type SpanDrive, spanDrive } from './span-drive.ts';
import { bendFactor, inverseCapacity } from './wear.ts';

/** Longest cell, mm of wire. */
export const longestCellMm = 10;

/** One span of a run: from hold to hold, which may lie past the run's ends. */
export interface Span {
  readonly fromMm: number;
  readonly toMm: number;
  readonly drive: SpanDrive;
  readonly missingClips: number;
}

/** A bend tighter than ten loom diameters. */
export interface TightBend {
  readonly stationMm: number;
  readonly turnRad: number;
  readonly radiusMm: number;
}

/** Everything the mechanisms need to know of one run, worked out once. */
export interface RunContext {
  readonly segment: Segment;
  readonly shape: RunShape;
  readonly through: BundleThrough;
  readonly wire: Wire;
  readonly assumptions: ChafeAssumptions;
  readonly cellCount: number;
  readonly cellMm: number;
  readonly spans: readonly Span[];
  /** 1 / capacity of wall and cover in every cell, 1/(N mm): large where copper shows soon. */
  readonly wear: Float64Array;
  readonly tightBends: readonly TightBend[];
  readonly near: readonly NearSpot[];
  readonly nearestRunMm: ReadonlyMap<string, number>;
  readonly bell: CellBell;
}

/**
 * Gathers what the mechanisms need of a run; null for one half drawn. `wire` is the wire under search, else
 * the weakest traced through the run.
 * @example
 * runContext(sample.map, sample.middle, defaultAssumptions).cellCount // => 50
 */
export function runContext(
  map: MapDocument,
  segment: Segment,
  assumptions: ChafeAssumptions,
  searched: Wire | null = null,
): RunContext | null {
  const shape = runShape(map, segment);
  if (!shape) return null;
  const { lengthMm } = shape.line;
  const circuits = circuitsThrough(map, segment.id);
  const through = bundleWith(circuits, segment.bundleDiameterMm);
  const wire = searched ?? weakestWire(circuits);
  const cellCount = Math.max(
    1,
    Math.ceil(Math.max(lengthMm, wireLengthMm(segment, lengthMm)) / longestCellMm - 1e-9),
  );
  const cellMm = lengthMm / cellCount;
  const tightBends = tightBendsOf(segment, shape, through.bundle.diameterMm, assumptions);
  const near = nearSpots(map, segment, assumptions.reachMm);
  const anyGiven = near.some(({ spot }) => spot.clearanceMm !== null);
  return {
    segment,
    shape,
    through,
    wire,
    assumptions,
    cellCount,
    cellMm,
    spans: spansOf(map, segment, shape, through, assumptions),
    wear: wearOf(map, segment, shape, wire, assumptions, cellCount, tightBends, through.bundle.diameterMm),
    tightBends,
    near,
    nearestRunMm: anyGiven ? nearestRunMm(map, assumptions.reachMm) : new Map(),
    bell: cellBell(cellMm, assumptions.placeSigmaMm),
  };
}

function spansOf(
  map: MapDocument,
  segment: Segment,
  { line: { lengthMm } }: RunShape,
  { bundle }: BundleThrough,
  { ride, motionCap }: ChafeAssumptions,
): readonly Span[] {
  const beam = { kgPerMetre: bundle.kgPerMetre, stiffnessNMm2: bundle.stiffnessNMm2.mean };
  const stations = segment.clips
    .filter((clip) => !clip.missing)
    .map((clip) => Math.min(clip.stationMm, lengthMm));
  stations.sort((a, b) => a - b);
  const beyondFrom = holdBeyondMm(map, segment, segment.fromNodeId);
  const beyondTo = holdBeyondMm(map, segment, segment.toNodeId);
  const firstClip = stations[0] ?? lengthMm + (Number.isFinite(beyondTo) ? beyondTo : 0);
  const lastClip = stations[stations.length - 1] ?? (Number.isFinite(beyondFrom) ? -beyondFrom : 0);
  // A free end moves like the middle of a span twice as long.
  const start = Number.isFinite(beyondFrom) ? -beyondFrom : -firstClip;
  const end = lengthMm + (Number.isFinite(beyondTo) ? beyondTo : lengthMm - lastClip);
  const holds = [start, ...stations, end];
  const sparePerMm = Math.max(0, wireLengthMm(segment, lengthMm) - lengthMm) / lengthMm;
  const spans: Span[] = [];
  for (let i = 1; i < holds.length; i++) {
    const fromMm = holds[i - 1] as number;
    const toMm = holds[i] as number;
    const spanMm = toMm - fromMm;
    if (spanMm <= 0) continue;
    spans.push({
      fromMm,
      toMm,
      drive: spanDrive(beam, spanMm, sparePerMm * spanMm, ride, motionCap),
      missingClips: segment.clips.filter(
        (clip) => clip.missing && clip.stationMm > fromMm && clip.stationMm < toMm,
      ).length,
    });
  }
  return spans;
}

const coverGoesOn: ReadonlySet<MapNode['kind']> = new Set(['branch', 'splice', 'grommet', 'loose-end']);

/** What the next run is covered with past a node; the best of several, bare where the cover must stop. */
function coverPast(
  map: MapDocument,
  segment: Segment,
  node: MapNode,
  { protection }: ChafeAssumptions,
): Protection {
  let best = protection.bare;
  if (!coverGoesOn.has(node.kind)) return best;
  for (const next of runsAtNode(map, node.id)) {
    if (next.id !== segment.id) best = stronger(best, protection[next.covering]);
  }
  return best;
}

/** Judged on the thinnest usual wall; only the order matters. */
const orderWall = 150;
const stronger = (a: Protection, b: Protection) =>
  meanWearRate(orderWall, a) <= meanWearRate(orderWall, b) ? a : b;

function wearOf(
  map: MapDocument,
  segment: Segment,
  shape: RunShape,
  wire: Wire,
  assumptions: ChafeAssumptions,
  cellCount: number,
  tightBends: readonly TightBend[],
  diameterMm: number,
): Float64Array {
  const { protection, coverEndMm, bendLegMm } = assumptions;
  const wall = wallStrokes(wire) / surroundingFactor(segment, assumptions);
  const own = protection[segment.covering];
  const rate = (factor: number, cover: Protection) => inverseCapacity(wall / factor, cover);
  const weaker = (past: Protection) => (stronger(own, past) === own ? past : own);
  const fromCover = weaker(coverPast(map, segment, shape.from, assumptions));
  const toCover = weaker(coverPast(map, segment, shape.to, assumptions));
  const { lengthMm } = shape.line;
  const cellMm = lengthMm / cellCount;
  const end = Math.min(coverEndMm, lengthMm / 2);
  const wear = new Float64Array(cellCount);
  const bent = (factor: number, cell: number): number => {
    const inFrom = Math.min(1, Math.max(0, (end - cell * cellMm) / cellMm));
    const inTo = Math.min(1, Math.max(0, (end - (lengthMm - (cell + 1) * cellMm)) / cellMm));
    const inside = Math.max(0, 1 - inFrom - inTo);
    if (inside === 1) return rate(factor, own);
    return inFrom * rate(factor, fromCover) + inTo * rate(factor, toCover) + inside * rate(factor, own);
  };
  wear.fill(rate(1, own));
  const endCells = Math.min(cellCount, Math.ceil(end / cellMm));
  for (let cell = 0; cell < endCells; cell++) {
    wear[cell] = bent(1, cell);
    wear[cellCount - 1 - cell] = bent(1, cellCount - 1 - cell);
  }
  for (const { stationMm, radiusMm } of tightBends) {
    const factor = bendFactor(diameterMm, radiusMm);
    const first = Math.max(0, Math.floor((stationMm - bendLegMm / 2) / cellMm));
    const last = Math.min(cellCount - 1, Math.floor((stationMm + bendLegMm / 2) / cellMm));
    for (let cell = first; cell <= last; cell++)
      wear[cell] = Math.max(wear[cell] as number, bent(factor, cell));
  }
  return wear;
}

function surroundingFactor(segment: Segment, { hotFactor, wetFactor }: ChafeAssumptions): number {
  return (segment.traits.includes('hot') ? hotFactor : 1) * (segment.traits.includes('wet') ? wetFactor : 1);
}

function tightBendsOf(
  segment: Segment,
  { line }: RunShape,
  diameterMm: number,
  { bendLegMm }: ChafeAssumptions,
): readonly TightBend[] {
  if (segment.bends.length === 0) return [];
  return cornersOf(line, bendLegMm).filter(({ radiusMm }) => radiusMm < 10 * diameterMm);
}

/**
 * Index of the span that holds a station of the run.
 * @example
 * spanIndexAt(runContext(sample.map, sample.segment, defaultAssumptions).spans, 250) // => 1
 */
export function spanIndexAt(spans: readonly Span[], stationMm: number): number {
  let index = 0;
  while (index < spans.length - 1 && (spans[index] as Span).toMm <= stationMm) index++;
  return index;
}

/**
 * The figures of a span that a sentence about a cause may need.
 * @example
 * spanFigures(runContext(sample.map, sample.segment, defaultAssumptions), 250).spanMm // => 300
 */
export function spanFigures(run: RunContext, stationMm: number): CauseFigures {
  const span = run.spans[spanIndexAt(run.spans, stationMm)] as Span;
  const covering: Covering = run.segment.covering;
  return {
    spanMm: span.drive.spanMm,
    sagMm: span.drive.hangMm,
    covering,
    ...(span.missingClips > 0 ? { missingClips: span.missingClips } : {}),
  };
}

/**
 * What past jobs taught about a cause, as a factor.
 * @example
 * causeFactor(runContext(sample.map, sample.segment, defaultAssumptions), 'wet') // => 1
 */
export function causeFactor(run: { readonly assumptions: ChafeAssumptions }, cause: CauseKind): number {
  return run.assumptions.causeFactor[cause] ?? 1;
}
