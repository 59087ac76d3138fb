import type { ClipId, SegmentId } from '../quantity/id.ts';
import { fail, ok, type Result } from '../quantity/result.ts';
import type { MapDocument } from './map-document.ts';
import type { Clip, Segment } from './records.ts';

/**
 * A record by its id, or `not-found` for a thing that is no longer there.
 * @example
 * findRecord(sample.map.panels, 'panel:none') // => { ok: false, problem: { code: 'not-found', thing: 'panel:none' } }
 */
export function findRecord<K extends string, T>(table: ReadonlyMap<K, T>, id: K): Result<T> {
  const record = table.get(id);
  return record ? ok(record) : fail({ code: 'not-found', thing: id });
}

/**
 * A clip and the run it sits on, or `not-found`.
 * @example
 * findClip(sample.map, 'segment:front', 'clip:b').value.clip.stationMm // => 400
 */
export function findClip(
  map: MapDocument,
  segmentId: SegmentId,
  clipId: ClipId,
): Result<{ readonly segment: Segment; readonly clip: Clip }> {
  const segment = map.segments.get(segmentId);
  if (!segment) return fail({ code: 'not-found', thing: segmentId });
  const clip = segment.clips.find((each) => each.id === clipId);
  return clip ? ok({ segment, clip }) : fail({ code: 'not-found', thing: clipId });
}
