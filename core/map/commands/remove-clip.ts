import type { ClipId, SegmentId } from '../../quantity/id.ts';
import type { Result } from '../../quantity/result.ts';
import { findClip } from '../find-record.ts';
import type { MapDocument } from '../map-document.ts';
import { draftOf } from '../map-draft.ts';
import type { Patch } from '../patch.ts';

/**
 * Takes a clip off a run: it was never there. One that is gone from the car is marked missing instead.
 * Refuses `not-found`.
 * @example
 * removeClip(sample.map, { segmentId: 'segment:front', clipId: 'clip:a' }).value.changed[0][1].clips.length // => 1
 */
export function removeClip(
  map: MapDocument,
  input: { readonly segmentId: SegmentId; readonly clipId: ClipId },
): Result<Patch> {
  const found = findClip(map, input.segmentId, input.clipId);
  if (!found.ok) return found;
  const { segment, clip } = found.value;
  const draft = draftOf(map);
  draft.put({ ...segment, clips: segment.clips.filter((each) => each !== clip) });
  return draft.finish();
}
