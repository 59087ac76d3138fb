import type { PlanPoint } from '../../geometry/place.ts';
import type { OutlineId } from '../../quantity/id.ts';
import { fail, ok, type Result } from '../../quantity/result.ts';
import { findRecord } from '../find-record.ts';
import type { MapDocument } from '../map-document.ts';
import type { Patch } from '../patch.ts';
import type { Outline, Vertex } from '../records.ts';
import { changeOutline } from './change-outline.ts';

interface VertexAt {
  readonly outlineId: OutlineId;
  readonly index: number;
}

function findVertex(
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
