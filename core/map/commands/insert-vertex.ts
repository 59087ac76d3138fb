import type { PlanPoint } from '../../geometry/place.ts';
import type { OutlineId } from '../../quantity/id.ts';
import { fail, type Result } from '../../quantity/result.ts';
import { findRecord } from '../find-record.ts';
import type { MapDocument } from '../map-document.ts';
import type { Patch } from '../patch.ts';
import type { Vertex } from '../records.ts';
import { changeOutline } from './change-outline.ts';

const between = (a: PlanPoint, b: PlanPoint, share: number): PlanPoint => ({
  xMm: a.xMm + (b.xMm - a.xMm) * share,
  yMm: a.yMm + (b.yMm - a.yMm) * share,
});

const reach = (from: PlanPoint, to: PlanPoint) => ({ dxMm: to.xMm - from.xMm, dyMm: to.yMm - from.yMm });

/**
 * Puts a corner into the edge after corner `edge`, `share` (0 to 1) of the way along it, without changing
 * the outline's shape: a bent edge is cut in two at that parameter (de Casteljau's construction).
 * Refuses `not-found` and `bad-value`.
 * @example
 * insertVertex(sample.map, { outlineId: 'outline:none', edge: 0, share: 0.5 }).problem.code // => 'not-found'
 */
export function insertVertex(
  map: MapDocument,
  input: { readonly outlineId: OutlineId; readonly edge: number; readonly share: number },
): Result<Patch> {
  const found = findRecord(map.outlines, input.outlineId);
  if (!found.ok) return found;
  const { vertices, closed } = found.value;
  const start = vertices[input.edge];
  const nextIndex = (input.edge + 1) % vertices.length;
  const end = vertices[nextIndex];
  const lastEdge = closed ? vertices.length - 1 : vertices.length - 2;
  if (!start || !end || input.edge > lastEdge) {
    return fail({ code: 'bad-value', field: 'edge', value: input.edge, allowed: `0 .. ${lastEdge}` });
  }
  if (!(input.share > 0 && input.share < 1)) {
    return fail({ code: 'bad-value', field: 'share', value: input.share, allowed: '> 0 and < 1' });
  }
  const [first, middle, last] = cutEdge(start, end, input.share);
  const cut = [...vertices];
  cut[input.edge] = first;
  cut[nextIndex] = last;
  cut.splice(input.edge + 1, 0, middle);
  return changeOutline(map, { outlineId: input.outlineId, changes: { vertices: cut } });
}

function cutEdge(start: Vertex, end: Vertex, share: number): readonly [Vertex, Vertex, Vertex] {
  if (!start.handleOut && !end.handleIn) return [start, between(start, end, share), end];
  const b = {
    xMm: start.xMm + (start.handleOut?.dxMm ?? 0),
    yMm: start.yMm + (start.handleOut?.dyMm ?? 0),
  };
  const c = { xMm: end.xMm + (end.handleIn?.dxMm ?? 0), yMm: end.yMm + (end.handleIn?.dyMm ?? 0) };
  const ab = between(start, b, share);
  const bc = between(b, c, share);
  const cd = between(c, end, share);
  const abc = between(ab, bc, share);
  const bcd = between(bc, cd, share);
  const middle = between(abc, bcd, share);
  return [
    { ...start, handleOut: reach(start, ab) },
    { ...middle, handleIn: reach(middle, abc), handleOut: reach(middle, bcd) },
    { ...end, handleIn: reach(end, cd) },
  ];
}
