import { type CircuitLine, segmentStationMm } from '#core/circuit/circuit-line.ts';
import type { Stretch } from '#core/job/reading.ts';

/** Pieces shorter than this are rounding at a run's end, not a place. */
const leastMm = 0.01;

/**
 * The drawn stretches of runs between two stations of the circuit, in the circuit's order. Stations off
 * either end count as that end. O(spans).
 */
export function stretchesBetween(line: CircuitLine, fromMm: number, toMm: number): readonly Stretch[] {
  const stretches: Stretch[] = [];
  for (const span of line.spans) {
    const start = Math.max(fromMm, span.fromMm);
    const end = Math.min(toMm, span.toMm);
    if (end - start < leastMm) continue;
    const a = segmentStationMm(span, start);
    const b = segmentStationMm(span, end);
    stretches.push({
      segmentId: span.segment.id,
      fromMm: Math.max(0, Math.min(a, b)),
      toMm: Math.max(a, b),
    });
  }
  return stretches;
}

/** A drawn stretch as circuit stations, one piece for each time the circuit passes its run. */
export function circuitRanges(
  line: CircuitLine,
  stretch: Stretch,
): readonly { readonly fromMm: number; readonly toMm: number }[] {
  return line.spans
    .filter((span) => span.segment.id === stretch.segmentId)
    .map((span) => {
      const wirePerDrawn = (span.toMm - span.fromMm) / span.line.lengthMm;
      const from = Math.min(stretch.fromMm, span.line.lengthMm) * wirePerDrawn;
      const to = Math.min(stretch.toMm, span.line.lengthMm) * wirePerDrawn;
      return span.reversed
        ? { fromMm: span.toMm - to, toMm: span.toMm - from }
        : { fromMm: span.fromMm + from, toMm: span.fromMm + to };
    });
}
