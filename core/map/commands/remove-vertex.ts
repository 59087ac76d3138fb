import { fail, type Result } from '../../quantity/result.ts';
import { findVertex, type VertexAt } from '../find-vertex.ts';
import type { MapDocument } from '../map-document.ts';
import type { Patch } from '../patch.ts';
import { changeOutline } from './change-outline.ts';

/**
 * Takes a corner out. A closed outline keeps three corners, an open one two (`too-few-points`).
 * @example
 * removeVertex(sample.map, { outlineId: 'outline:none', index: 0 }).problem.code // => 'not-found'
 */
export function removeVertex(map: MapDocument, input: VertexAt): Result<Patch> {
  const found = findVertex(map, input);
  if (!found.ok) return found;
  const { outline } = found.value;
  const needed = outline.closed ? 3 : 2;
  if (outline.vertices.length <= needed) {
    return fail({ code: 'too-few-points', needed, found: outline.vertices.length - 1 });
  }
  return changeOutline(map, {
    outlineId: outline.id,
    changes: { vertices: outline.vertices.toSpliced(input.index, 1) },
  });
}
