import { smoothLine } from '../geometry/smooth-line.ts';
import { type StationLine, stationLine } from '../geometry/station-line.ts';
import { samePlaceMm } from '../quantity/tolerance.ts';
import type { MapDocument } from './map-document.ts';
import type { Segment } from './records.ts';

/**
 * The drawn line of a run, from its first node through its bends to its last, heights included.
 * Null when a node is missing or the line has no length: a half-drawn map is legal.
 * @example
 * segmentLine(sample.map, sample.segment).lengthMm // => 500
 */
export function segmentLine(map: MapDocument, segment: Segment): StationLine | null {
  const from = map.nodes.get(segment.fromNodeId);
  const to = map.nodes.get(segment.toNodeId);
  if (!from || !to) return null;
  const corners = [from.at, ...segment.bends, to.at];
  const line = stationLine(segment.smooth ? smoothLine(corners) : corners);
  return line.lengthMm < samePlaceMm ? null : line;
}

/**
 * The length of wire in a run: as measured when someone did, else as drawn.
 * @example
 * wireLengthMm(sample.segment, 500) // => 500
 */
export function wireLengthMm(segment: Segment, drawnLengthMm: number): number {
  return segment.measuredLengthMm ?? drawnLengthMm;
}

/**
 * Extra wire beyond the drawn line, in mm; never negative.
 * @example
 * slackMm({ ...sample.segment, measuredLengthMm: 512 }, 500) // => 12
 */
export function slackMm(segment: Segment, drawnLengthMm: number): number {
  return Math.max(0, wireLengthMm(segment, drawnLengthMm) - drawnLengthMm);
}
