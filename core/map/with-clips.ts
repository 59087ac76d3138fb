import { compareText } from '../quantity/compare-text.ts';
import type { ClipId } from '../quantity/id.ts';
import type { MapDocument } from './map-document.ts';
import type { Clip, Segment } from './records.ts';

/**
 * The run with these clips, in order along it.
 * @example
 * withClips(sample.segment, sample.segment.clips.toReversed()).clips[0].id // => 'clip:a'
 */
export function withClips(segment: Segment, clips: readonly Clip[]): Segment {
  return {
    ...segment,
    clips: [...clips].sort((a, b) => a.stationMm - b.stationMm || compareText(a.id, b.id)),
  };
}

/**
 * Ids of all clips on a map. O(clips).
 * @example
 * [...clipIdsOf(sample.map)] // => ['clip:a', 'clip:b']
 */
export function clipIdsOf(map: MapDocument): ReadonlySet<ClipId> {
  const ids = new Set<ClipId>();
  for (const segment of map.segments.values()) {
    for (const clip of segment.clips) ids.add(clip.id);
  }
  return ids;
}
