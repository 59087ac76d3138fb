import type { PlanPoint } from '../../geometry/place.ts';
import type { Result } from '../../quantity/result.ts';
import { findVertex, type VertexAt } from '../find-vertex.ts';
import type { MapDocument } from '../map-document.ts';
import type { Patch } from '../patch.ts';
import type { Vertex } from '../records.ts';
import { changeOutline } from './change-outline.ts';

/**
 * Moves a corner of an outline; its handles go along. Give `handleIn` or `handleOut` to bend its edges,
 * null to straighten them. Refuses `not-found` and `bad-value`.
 * @example
 * moveVertex(sample.map, { outlineId: 'outline:none', index: 0, at: { xMm: 0, yMm: 0 } }).problem.code // => 'not-found'
 */
export function moveVertex(
  map: MapDocument,
  input: VertexAt & {
    readonly at: PlanPoint;
    readonly handleIn?: Vertex['handleIn'] | null;
    readonly handleOut?: Vertex['handleOut'] | null;
  },
): Result<Patch> {
  const found = findVertex(map, input);
  if (!found.ok) return found;
  const { outline, vertex } = found.value;
  const handleIn = input.handleIn === undefined ? vertex.handleIn : input.handleIn;
  const handleOut = input.handleOut === undefined ? vertex.handleOut : input.handleOut;
  const moved: Vertex = {
    xMm: input.at.xMm,
    yMm: input.at.yMm,
    ...(handleIn ? { handleIn } : {}),
    ...(handleOut ? { handleOut } : {}),
  };
  return changeOutline(map, {
    outlineId: outline.id,
    changes: { vertices: outline.vertices.with(input.index, moved) },
  });
}
