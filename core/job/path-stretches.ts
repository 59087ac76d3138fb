import {
  type CircuitLine,
  type CircuitSpan,
  circuitStationMm,
  segmentStationMm,
} from '../circuit/circuit-line.ts';
import { coveredShare, type StationRange } from '../locate/station-ranges.ts';
import { segmentNeeds } from '../map/segment-needs.ts';
import type { PanelId, SegmentId } from '../quantity/id.ts';
import type { Stretch } from './reading.ts';

/** A piece of the circuit hidden by the same panels, by circuit station. */
export interface PathStretch extends StationRange {
  readonly segmentId: SegmentId;
  readonly panelIds: readonly PanelId[];
}

/**
 * The whole circuit cut by run and by what hides it, from its first end to its second, without gaps.
 * @example
 * pathStretches(sample.line).map(({ fromMm, toMm }) => [fromMm, toMm]) // => [[0, 500], [500, 600], [600, 1000], [1000, 1500]]
 */
export function pathStretches(line: CircuitLine): PathStretch[] {
  return line.spans.flatMap((span) => {
    const drawnMm = span.line.lengthMm;
    const onCircuit = (stationMm: number): number => {
      if (stationMm <= 0) return span.reversed ? span.toMm : span.fromMm;
      if (stationMm >= drawnMm) return span.reversed ? span.fromMm : span.toMm;
      return circuitStationMm(span, stationMm);
    };
    const pieces = segmentNeeds(span.segment, drawnMm).map(({ fromMm, toMm, panelIds }) => {
      const [a, b] = [onCircuit(fromMm), onCircuit(toMm)];
      return { segmentId: span.segment.id, fromMm: Math.min(a, b), toMm: Math.max(a, b), panelIds };
    });
    return span.reversed ? pieces.reverse() : pieces;
  });
}

/**
 * Panels that hide any part of some pieces of the circuit (mm from its first end), each once.
 * @example
 * panelsOverPieces(sample.line, [{ fromMm: 550, toMm: 700 }]) // => ['panel:tread', 'panel:seat']
 */
export function panelsOverPieces(line: CircuitLine, pieces: readonly StationRange[]): readonly PanelId[] {
  const over = pathStretches(line).filter(({ fromMm, toMm }) => coveredShare(pieces, fromMm, toMm) > 0);
  return [...new Set(over.flatMap(({ panelIds }) => panelIds))];
}

/**
 * Where drawn stretches of runs lie on the circuit's own ruler; those on other runs give nothing, and
 * what reaches beyond a run's end is cut there.
 * @example
 * onCircuit(sample.line, [{ segmentId: 'segment:middle', fromMm: 100, toMm: 200 }]) // => [{ fromMm: 600, toMm: 700 }]
 */
export function onCircuit(line: CircuitLine, stretches: readonly Stretch[]): StationRange[] {
  const ranges: StationRange[] = [];
  for (const stretch of stretches) {
    for (const span of line.spans) {
      if (span.segment.id !== stretch.segmentId) continue;
      const a = circuitStationMm(span, within(span, stretch.fromMm));
      const b = circuitStationMm(span, within(span, stretch.toMm));
      if (a !== b) ranges.push({ fromMm: Math.min(a, b), toMm: Math.max(a, b) });
    }
  }
  return ranges;
}

/**
 * Pieces of the circuit as drawn stretches of the runs they lie on.
 * @example
 * drawnStretches(sample.line, [{ fromMm: 600, toMm: 1200 }])[1] // => { segmentId: 'segment:rear', fromMm: 0, toMm: 200 }
 */
export function drawnStretches(line: CircuitLine, ranges: readonly StationRange[]): Stretch[] {
  return ranges.flatMap((range) =>
    line.spans.flatMap((span): Stretch[] => {
      const fromMm = Math.max(range.fromMm, span.fromMm);
      const toMm = Math.min(range.toMm, span.toMm);
      if (toMm <= fromMm) return [];
      const [a, b] = [segmentStationMm(span, fromMm), segmentStationMm(span, toMm)];
      return [{ segmentId: span.segment.id, fromMm: Math.min(a, b), toMm: Math.max(a, b) }];
    }),
  );
}

function within(span: CircuitSpan, stationMm: number): number {
  return Math.min(span.line.lengthMm, Math.max(0, stationMm));
}
