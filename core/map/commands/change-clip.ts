import type { ClipId, SegmentId } from '../../quantity/id.ts';
import type { Result } from '../../quantity/result.ts';
import { findClip } from '../find-record.ts';
import type { MapDocument } from '../map-document.ts';
import { draftOf } from '../map-draft.ts';
import type { Patch } from '../patch.ts';
import type { Clip } from '../records.ts';
import { withClips } from '../with-clips.ts';

/**
 * Changes the kind of a clip or marks it missing. Refuses `not-found` and `bad-field`.
 * @example
 * changeClip(sample.map, { segmentId: 'segment:front', clipId: 'clip:a', changes: { missing: true } }).value.changed[0][1].clips[0].missing // => true
 */
export function changeClip(
  map: MapDocument,
  input: {
    readonly segmentId: SegmentId;
    readonly clipId: ClipId;
    readonly changes: Partial<Omit<Clip, 'id' | 'stationMm'>>;
  },
): Result<Patch> {
  const found = findClip(map, input.segmentId, input.clipId);
  if (!found.ok) return found;
  const { segment, clip } = found.value;
  const draft = draftOf(map);
  draft.put(
    withClips(
      segment,
      segment.clips.map((each) => (each === clip ? { ...clip, ...input.changes } : each)),
    ),
  );
  return draft.finish();
}
