import { type Bounds, boundsOf } from '#core/geometry/bounds.ts';
import type { PlanPoint } from '#core/geometry/place.ts';
import { pointAtStation } from '#core/geometry/station-line.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { recordOf } from '#core/map/map-draft.ts';
import { underlayCorners } from '#core/map/underlay-place.ts';
import { outlineLine } from '../../board/outline-line.ts';
import { runLine } from '../../board/run-line.ts';

/** The rectangle round some things of a map; null when none of them has a place. */
export function boundsOfThings(map: MapDocument, ids: readonly string[]): Bounds | null {
  return boundsOf(ids.flatMap((id) => pointsOf(map, id)));
}

/** The line or the corners a thing is drawn along; empty for what has no place. */
export function pointsOf(map: MapDocument, id: string): readonly PlanPoint[] {
  if (id.startsWith('clip:')) {
    for (const segment of map.segments.values()) {
      const clip = segment.clips.find((each) => each.id === id);
      const line = clip && runLine(map, segment);
      if (line) return [pointAtStation(line, clip.stationMm)];
    }
    return [];
  }
  const record = recordOf(map, id);
  if (!record) return [];
  if ('fromNodeId' in record) return runLine(map, record)?.points ?? [];
  if ('vertices' in record) return outlineLine(record);
  if ('area' in record) return record.area;
  if ('points' in record) return record.points;
  if ('path' in record) return record.path.flatMap((step) => pointsOf(map, step.segmentId));
  if ('mmPerPx' in record) return underlayCorners(record);
  if ('at' in record) return [record.at];
  return [];
}
