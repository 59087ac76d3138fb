import type { PlanPoint } from '#core/geometry/place.ts';
import { moveVertex } from '#core/map/commands/move-vertex.ts';
import { curveThrough, type DrawnPoint } from '#core/map/curve-through.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Patch } from '#core/map/patch.ts';
import type { Outline, Vertex } from '#core/map/records.ts';
import type { OutlineId } from '#core/quantity/id.ts';
import { fail, type Result } from '#core/quantity/result.ts';

/** One of the two handles that bend the edges at a corner of an outline. */
export interface CurveGrip {
  readonly outlineId: OutlineId;
  readonly index: number;
  readonly which: 'handleIn' | 'handleOut';
  readonly at: PlanPoint;
}

/** The handles of one corner; none where its edges are straight. */
export function curveGripsOf(map: MapDocument, outlineId: OutlineId, index: number): readonly CurveGrip[] {
  const vertex = map.outlines.get(outlineId)?.vertices[index];
  if (!vertex) return [];
  return (['handleIn', 'handleOut'] as const).flatMap((which) => {
    const handle = vertex[which];
    if (!handle) return [];
    return [{ outlineId, index, which, at: placeOf(vertex, handle) }];
  });
}

const placeOf = (vertex: Vertex, handle: { readonly dxMm: number; readonly dyMm: number }): PlanPoint => ({
  xMm: vertex.xMm + handle.dxMm,
  yMm: vertex.yMm + handle.dyMm,
});

/** Bends the edge by pulling a handle. Unless `alone`, the other one turns with it, so that the curve stays smooth. */
export function pullGrip(map: MapDocument, grip: CurveGrip, to: PlanPoint, alone: boolean): Result<Patch> {
  const { outlineId, index, which } = grip;
  const vertex = map.outlines.get(outlineId)?.vertices[index];
  if (!vertex) return fail({ code: 'not-found', thing: outlineId });
  const pulled = { dxMm: to.xMm - vertex.xMm, dyMm: to.yMm - vertex.yMm };
  const other = which === 'handleIn' ? 'handleOut' : 'handleIn';
  const otherNow = vertex[other];
  const reachMm = Math.hypot(pulled.dxMm, pulled.dyMm);
  const otherMm = otherNow ? Math.hypot(otherNow.dxMm, otherNow.dyMm) : 0;
  const turned =
    otherNow && !alone && reachMm > 0
      ? { dxMm: (-pulled.dxMm / reachMm) * otherMm, dyMm: (-pulled.dyMm / reachMm) * otherMm }
      : otherNow;
  return moveVertex(map, {
    outlineId,
    index,
    at: vertex,
    [which]: pulled,
    ...(turned ? { [other]: turned } : {}),
  });
}

/** Makes a corner round (a calm curve through it and its neighbours) or straight again. */
export function bendCorner(
  map: MapDocument,
  outlineId: OutlineId,
  index: number,
  curved: boolean,
): Result<Patch> {
  const outline = map.outlines.get(outlineId);
  const vertex = outline?.vertices[index];
  if (!outline || !vertex) return fail({ code: 'not-found', thing: outlineId });
  const calm = curved ? calmCorner(outline, index) : null;
  return moveVertex(map, {
    outlineId,
    index,
    at: vertex,
    handleIn: calm?.handleIn ?? null,
    handleOut: calm?.handleOut ?? null,
  });
}

/** The end of an open outline has one edge only and cannot be rounded. */
function calmCorner({ vertices, closed }: Outline, index: number): Vertex | null {
  const count = vertices.length;
  const before = vertices[closed ? (index + count - 1) % count : index - 1];
  const here = vertices[index];
  const after = vertices[closed ? (index + 1) % count : index + 1];
  if (!before || !here || !after) return null;
  const drawn = [before, here, after].map(({ xMm, yMm }): DrawnPoint => [xMm, yMm]);
  return curveThrough(drawn, false)[1] ?? null;
}

/** Whether a corner's edges are bent at it. */
export const isCurved = (vertex: Vertex): boolean => Boolean(vertex.handleIn ?? vertex.handleOut);
