import type { SegmentId } from '../../quantity/id.ts';
import { fail, type Result } from '../../quantity/result.ts';
import { samePlaceMm } from '../../quantity/tolerance.ts';
import { findRecord } from '../find-record.ts';
import type { MapDocument } from '../map-document.ts';
import { draftOf, recordOf } from '../map-draft.ts';
import type { Patch } from '../patch.ts';
import { segmentLine } from '../segment-line.ts';
import { type SplitIds, splitRun } from '../split-run.ts';

/**
 * Splits a run at a station, with a branch node there. Clips, tags, traits and circuit paths follow,
 * exactly; the part up to the station keeps the run's id. Refuses `not-found`, `duplicate-id`,
 * `zero-length`, and a station at or beyond an end (`bad-value`).
 * @example
 * splitSegment(sample.map, { segmentId: 'segment:middle', stationMm: 200, ids: { nodeId: 'node:n', segmentId: 'segment:n' } }).value.added.map((each) => each.id) // => ['node:n', 'segment:n']
 */
export function splitSegment(
  map: MapDocument,
  input: { readonly segmentId: SegmentId; readonly stationMm: number; readonly ids: SplitIds },
): Result<Patch> {
  const segment = findRecord(map.segments, input.segmentId);
  if (!segment.ok) return segment;
  for (const id of [input.ids.nodeId, input.ids.segmentId]) {
    if (recordOf(map, id)) return fail({ code: 'duplicate-id', thing: id });
  }
  const line = segmentLine(map, segment.value);
  if (!line) return fail({ code: 'zero-length', thing: input.segmentId });
  const inside = input.stationMm >= samePlaceMm && input.stationMm <= line.lengthMm - samePlaceMm;
  if (!inside) {
    return fail({
      code: 'bad-value',
      field: 'stationMm',
      value: input.stationMm,
      allowed: `${samePlaceMm} .. ${line.lengthMm - samePlaceMm}`,
    });
  }
  const draft = draftOf(map);
  splitRun(draft, segment.value, line, input.stationMm, input.ids);
  return draft.finish();
}
