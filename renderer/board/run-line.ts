import type { StationLine } from '#core/geometry/station-line.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { MapNode, Segment } from '#core/map/records.ts';
import { segmentLine } from '#core/map/segment-line.ts';

interface Kept {
  readonly from: MapNode | undefined;
  readonly to: MapNode | undefined;
  readonly line: StationLine | null;
}
const kept = new WeakMap<Segment, Kept>();

/** The drawn line of a run, measured once for each state of the run and of its two nodes. */
export function runLine(map: MapDocument, segment: Segment): StationLine | null {
  const from = map.nodes.get(segment.fromNodeId);
  const to = map.nodes.get(segment.toNodeId);
  const known = kept.get(segment);
  if (known && known.from === from && known.to === to) return known.line;
  const line = segmentLine(map, segment);
  kept.set(segment, { from, to, line });
  return line;
}
