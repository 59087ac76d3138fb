import type { Chance } from '../../quantity/chance.ts';
import { newId, type SegmentId } from '../../quantity/id.ts';
import { fail, type Result } from '../../quantity/result.ts';
import { findRecord } from '../find-record.ts';
import type { ClipKind } from '../kinds.ts';
import type { MapDocument } from '../map-document.ts';
import { draftOf } from '../map-draft.ts';
import type { Patch } from '../patch.ts';
import type { Clip } from '../records.ts';
import { stationOnRun } from '../station-on-run.ts';
import { clipIdsOf, withClips } from '../with-clips.ts';

/**
 * Adds `count` clips at even distances: the first at `fromMm`, the last at `toMm`; a single one goes in the
 * middle. Refuses `not-found`, `bad-value` for the count, `zero-length` and `beyond-end`.
 * @example
 * addClipsEvenly(sample.map, { segmentId: 'segment:rear', fromMm: 100, toMm: 300, count: 3, kind: 'clip' }, seededChance(1)).value.changed[0][1].clips.map((clip) => clip.stationMm) // => [100, 200, 300]
 */
export function addClipsEvenly(
  map: MapDocument,
  input: {
    readonly segmentId: SegmentId;
    readonly fromMm: number;
    readonly toMm: number;
    readonly count: number;
    readonly kind: ClipKind;
  },
  chance: Chance,
): Result<Patch> {
  const segment = findRecord(map.segments, input.segmentId);
  if (!segment.ok) return segment;
  const { count } = input;
  if (!Number.isInteger(count) || count < 1 || count > 500) {
    return fail({ code: 'bad-value', field: 'count', value: count, allowed: '1 .. 500' });
  }
  const from = stationOnRun(map, segment.value, Math.min(input.fromMm, input.toMm), 'fromMm');
  if (!from.ok) return from;
  const to = stationOnRun(map, segment.value, Math.max(input.fromMm, input.toMm), 'toMm');
  if (!to.ok) return to;
  const share = (i: number): number => (count === 1 ? 0.5 : i / (count - 1));
  const taken = new Set(clipIdsOf(map));
  const clips: Clip[] = [];
  while (clips.length < count) {
    const id = newId('clip', chance);
    if (taken.has(id)) continue;
    taken.add(id);
    const stationMm = from.value + (to.value - from.value) * share(clips.length);
    clips.push({ id, stationMm, kind: input.kind, missing: false });
  }
  const draft = draftOf(map);
  draft.put(withClips(segment.value, [...segment.value.clips, ...clips]));
  return draft.finish();
}
