import { planDistanceMm } from '../../geometry/point.ts';
import type { OutlineId } from '../../quantity/id.ts';
import { fail, type Result } from '../../quantity/result.ts';
import { samePlaceMm } from '../../quantity/tolerance.ts';
import { findRecord } from '../find-record.ts';
import type { MapDocument } from '../map-document.ts';
import type { Patch } from '../patch.ts';
import { changeOutline } from './change-outline.ts';

/**
 * Closes an outline back to its first corner, or opens it again. A closed one needs three corners
 * (`too-few-points`); a last corner drawn on top of the first is dropped.
 * @example
 * closeOutline(sample.map, { outlineId: 'outline:none', closed: true }).problem.code // => 'not-found'
 */
export function closeOutline(
  map: MapDocument,
  input: { readonly outlineId: OutlineId; readonly closed: boolean },
): Result<Patch> {
  const outline = findRecord(map.outlines, input.outlineId);
  if (!outline.ok) return outline;
  if (!input.closed) return changeOutline(map, { ...input, changes: { closed: false } });
  const vertices = [...outline.value.vertices];
  const first = vertices[0];
  const last = vertices[vertices.length - 1];
  if (first && last && vertices.length > 1 && planDistanceMm(first, last) < samePlaceMm) {
    vertices.pop();
    if (last.handleIn) vertices[0] = { ...first, handleIn: last.handleIn };
  }
  if (vertices.length < 3) return fail({ code: 'too-few-points', needed: 3, found: vertices.length });
  return changeOutline(map, { ...input, changes: { closed: true, vertices } });
}
