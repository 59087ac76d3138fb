import { type Bounds, boundsOf, grownBounds } from '../geometry/bounds.ts';
import type { StationLine } from '../geometry/station-line.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { MapNode, Segment } from '../map/records.ts';
import { segmentLine } from '../map/segment-line.ts';

/** The drawn line of a run with its plan rectangle, and whether any height was given. */
export interface RunShape {
  readonly from: MapNode;
  readonly to: MapNode;
  readonly line: StationLine;
  readonly bounds: Bounds;
  readonly hasHeight: boolean;
}

const known = new WeakMap<Segment, RunShape>();

/**
 * The shape of a run; null for one half drawn. Remembered as long as the run and both its nodes are the
 * same records. O(points) the first time.
 * @example
 * runShape(sample.map, sample.segment).line.lengthMm // => 500
 */
export function runShape(map: MapDocument, segment: Segment): RunShape | null {
  const from = map.nodes.get(segment.fromNodeId);
  const to = map.nodes.get(segment.toNodeId);
  if (!from || !to) return null;
  const before = known.get(segment);
  if (before && before.from === from && before.to === to) return before;
  const line = segmentLine(map, segment);
  const bounds = line && boundsOf(line.points);
  if (!line || !bounds) return null;
  const hasHeight = line.points.some((point) => point.zMm !== 0);
  // Smoothing rounds station sums; a hair keeps edge cases inside.
  const shape = { from, to, line, bounds: grownBounds(bounds, 0.001), hasHeight };
  known.set(segment, shape);
  return shape;
}
