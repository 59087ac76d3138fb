import type { Result } from '../../quantity/result.ts';
import { type BendAt, findBend } from '../find-bend.ts';
import type { MapDocument } from '../map-document.ts';
import type { Patch } from '../patch.ts';
import { changeSegment } from './change-segment.ts';

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
