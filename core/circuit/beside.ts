import { type CircuitLine, circuitStationMm, segmentStationMm, spanAt } from './circuit-line.ts';

/**
 * Stations of a second wire where it lies beside stations of the first; NaN where the two do not run
 * together. O(stations log spans).
 * @example
 * besideStations(sample.line, sample.line, [250, 1000]) // => Float64Array.of(250, 1000)
 */
export function besideStations(
  line: CircuitLine,
  other: CircuitLine,
  stationsMm: ArrayLike<number>,
): Float64Array {
  const otherSpans = new Map(other.spans.map((span) => [span.segment.id, span]));
  return Float64Array.from(stationsMm, (mm) => {
    const span = spanAt(line, mm);
    const beside = otherSpans.get(span.segment.id);
    return beside ? circuitStationMm(beside, segmentStationMm(span, mm)) : Number.NaN;
  });
}
