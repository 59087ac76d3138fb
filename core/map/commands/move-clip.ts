import type { ClipId, SegmentId } from '../../quantity/id.ts';
import type { Result } from '../../quantity/result.ts';
import { findClip } from '../find-record.ts';
import type { MapDocument } from '../map-document.ts';
import { draftOf } from '../map-draft.ts';
import type { Patch } from '../patch.ts';
import { stationOnRun } from '../station-on-run.ts';
import { withClips } from '../with-clips.ts';

/**
 * Slides a clip along its run. Refuses `not-found`, `zero-length` and `beyond-end`.
 * @example
 * moveClip(sample.map, { segmentId: 'segment:front', clipId: 'clip:a', stationMm: 450 }).value.changed[0][1].clips.map((clip) => clip.id) // => ['clip:b', 'clip:a']
 */
export function moveClip(
  map: MapDocument,
  input: { readonly segmentId: SegmentId; readonly clipId: ClipId; readonly stationMm: number },
): Result<Patch> {
  const found = findClip(map, input.segmentId, input.clipId);
  if (!found.ok) return found;
  const { segment, clip } = found.value;
  const station = stationOnRun(map, segment, input.stationMm, 'stationMm');
  if (!station.ok) return station;
  const moved = { ...clip, stationMm: station.value };
  const draft = draftOf(map);
  draft.put(
    withClips(
      segment,
      segment.clips.map((each) => (each === clip ? moved : each)),
    ),
  );
  return draft.finish();
}
