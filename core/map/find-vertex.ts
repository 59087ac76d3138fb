import type { OutlineId } from '../quantity/id.ts';
import { fail, ok, type Result } from '../quantity/result.ts';
import { findRecord } from './find-record.ts';
import type { MapDocument } from './map-document.ts';
import type { Outline, Vertex } from './records.ts';

/** Which corner of which outline. */
export interface VertexAt {
  readonly outlineId: OutlineId;
  readonly index: number;
}

/**
 * A corner of an outline, or `not-found` for the outline and `bad-value` for the corner.
 * @example
 * findVertex(sample.map, { outlineId: 'outline:none', index: 0 }).problem.code // => 'not-found'
 */
export function findVertex(
  map: MapDocument,
  input: VertexAt,
): Result<{ readonly outline: Outline; readonly vertex: Vertex }> {
  const outline = findRecord(map.outlines, input.outlineId);
  if (!outline.ok) return outline;
  const vertex = outline.value.vertices[input.index];
  return vertex
    ? ok({ outline: outline.value, vertex })
    : fail({
        code: 'bad-value',
        field: 'index',
        value: input.index,
        allowed: `0 .. ${outline.value.vertices.length - 1}`,
      });
}
