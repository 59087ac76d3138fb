import type { BodyPoint } from '../../geometry/place.ts';
import type { Result } from '../../quantity/result.ts';
import { type BendAt, findBend } from '../find-bend.ts';
import type { MapDocument } from '../map-document.ts';
import type { Patch } from '../patch.ts';
import { changeSegment } from './change-segment.ts';

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
