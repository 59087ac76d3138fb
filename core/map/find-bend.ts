import type { SegmentId } from '../quantity/id.ts';
import { fail, ok, type Result } from '../quantity/result.ts';
import { findRecord } from './find-record.ts';
import type { MapDocument } from './map-document.ts';
import type { Segment } from './records.ts';

/** Which bend of which run. */
export interface BendAt {
  readonly segmentId: SegmentId;
  readonly index: number;
}

/**
 * The run that has a bend, or `not-found` for the run and `bad-value` for the bend.
 * @example
 * findBend(sample.map, { segmentId: 'segment:rear', index: 0 }).problem.code // => 'bad-value'
 */
export function findBend(map: MapDocument, input: BendAt): Result<Segment> {
  const found = findRecord(map.segments, input.segmentId);
  if (!found.ok) return found;
  if (found.value.bends[input.index]) return ok(found.value);
  return fail({
    code: 'bad-value',
    field: 'index',
    value: input.index,
    allowed: `0 .. ${found.value.bends.length - 1}`,
  });
}
