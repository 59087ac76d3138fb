import type { MapDocument } from '#core/map/map-document.ts';
import type { Segment } from '#core/map/records.ts';
import type { SegmentId } from '#core/quantity/id.ts';

/** Where each fixing was found before. It seldom gets to another run, and it is asked for at every frame. */
const runs = new Map<string, SegmentId>();
const mostRuns = 2_000;

/** The run a fixing sits on; null when the map has no such fixing. */
export function runOfClip(map: MapDocument, clipId: string): Segment | null {
  const has = (segment: Segment | undefined): boolean =>
    segment?.clips.some(({ id }) => id === clipId) ?? false;
  const known = runs.get(clipId);
  const before = known && map.segments.get(known);
  if (before && has(before)) return before;
  for (const segment of map.segments.values()) {
    if (!has(segment)) continue;
    if (runs.size >= mostRuns) runs.clear();
    runs.set(clipId, segment.id);
    return segment;
  }
  return null;
}
