import type { SegmentId } from '../../quantity/id.ts';
import { fail, type Result } from '../../quantity/result.ts';
import { findRecord } from '../find-record.ts';
import type { MapDocument } from '../map-document.ts';
import { draftOf } from '../map-draft.ts';
import type { Patch } from '../patch.ts';
import type { Clip } from '../records.ts';
import { stationOnRun } from '../station-on-run.ts';
import { clipIdsOf, withClips } from '../with-clips.ts';

/**
 * Adds one clip to a run. Refuses `not-found`, `duplicate-id`, `zero-length` and `beyond-end`.
 * @example
 * addClip(sample.map, { segmentId: 'segment:rear', clip: { id: 'clip:n', stationMm: 50, kind: 'tie', missing: false } }).value.changed[0][1].clips.length // => 1
 */
export function addClip(
  map: MapDocument,
  input: { readonly segmentId: SegmentId; readonly clip: Clip },
): Result<Patch> {
  const segment = findRecord(map.segments, input.segmentId);
  if (!segment.ok) return segment;
  if (clipIdsOf(map).has(input.clip.id)) return fail({ code: 'duplicate-id', thing: input.clip.id });
  const station = stationOnRun(map, segment.value, input.clip.stationMm, 'clip.stationMm');
  if (!station.ok) return station;
  const draft = draftOf(map);
  draft.put(withClips(segment.value, [...segment.value.clips, { ...input.clip, stationMm: station.value }]));
  return draft.finish();
}
