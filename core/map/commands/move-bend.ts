import type { BodyPoint } from '../../geometry/place.ts';
import type { SegmentId } from '../../quantity/id.ts';
import { fail, ok, type Result } from '../../quantity/result.ts';
import { findRecord } from '../find-record.ts';
import type { MapDocument } from '../map-document.ts';
import type { Patch } from '../patch.ts';
import type { Segment } from '../records.ts';
import { changeSegment } from './change-segment.ts';

interface BendAt {
  readonly segmentId: SegmentId;
  readonly index: number;
}

function findBend(map: MapDocument, input: BendAt): Result<Segment> {
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

/**
 * Moves one bend of a run; clips and tags stay where they physically are. Refuses `not-found`,
 * `bad-value` for a bend that is not there, and `zero-length`.
 * @example
 * moveBend(sample.map, { segmentId: 'segment:rear', index: 0, at: { xMm: 0, yMm: 0, zMm: 0 } }).problem.code // => 'bad-value'
 */
export function moveBend(map: MapDocument, input: BendAt & { readonly at: BodyPoint }): Result<Patch> {
  const found = findBend(map, input);
  if (!found.ok) return found;
  const bends = found.value.bends.with(input.index, input.at);
  return changeSegment(map, { segmentId: input.segmentId, changes: { bends } });
}

/**
 * Takes one bend out of a run; clips and tags stay as near to their places as the straighter line
 * allows. Refuses `not-found`, `bad-value` and `zero-length`.
 * @example
 * removeBend(sample.map, { segmentId: 'segment:rear', index: 0 }).problem.code // => 'bad-value'
 */
export function removeBend(map: MapDocument, input: BendAt): Result<Patch> {
  const found = findBend(map, input);
  if (!found.ok) return found;
  const bends = found.value.bends.toSpliced(input.index, 1);
  return changeSegment(map, { segmentId: input.segmentId, changes: { bends } });
}
