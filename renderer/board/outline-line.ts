import type { PlanPoint } from '#core/geometry/place.ts';
import type { Outline, Vertex } from '#core/map/records.ts';

const piecesPerCurve = 20;
const kept = new WeakMap<Outline, readonly PlanPoint[]>();

/** The edges of an outline as pairs of vertices; a closed one has the edge home as well. */
export function outlineEdges(outline: Outline): readonly (readonly [Vertex, Vertex])[] {
  const { vertices, closed } = outline;
  const count = closed && vertices.length > 2 ? vertices.length : vertices.length - 1;
  const edges: (readonly [Vertex, Vertex])[] = [];
  for (let i = 0; i < count; i++) {
    edges.push([vertices[i] as Vertex, vertices[(i + 1) % vertices.length] as Vertex]);
  }
  return edges;
}

/** The outline as one line of plan points, its curves (cubic, from the handles) in short chords. */
export function outlineLine(outline: Outline): readonly PlanPoint[] {
  const known = kept.get(outline);
  if (known) return known;
  const points: PlanPoint[] = outline.vertices.slice(0, 1);
  for (const [a, b] of outlineEdges(outline)) {
    if (a.handleOut || b.handleIn) points.push(...curvePoints(a, b));
    else points.push(b);
  }
  kept.set(outline, points);
  return points;
}

function curvePoints(a: Vertex, b: Vertex): PlanPoint[] {
  const c1 = { xMm: a.xMm + (a.handleOut?.dxMm ?? 0), yMm: a.yMm + (a.handleOut?.dyMm ?? 0) };
  const c2 = { xMm: b.xMm + (b.handleIn?.dxMm ?? 0), yMm: b.yMm + (b.handleIn?.dyMm ?? 0) };
  const points: PlanPoint[] = [];
  for (let k = 1; k <= piecesPerCurve; k++) {
    const t = k / piecesPerCurve;
    const u = 1 - t;
    const [wa, w1, w2, wb] = [u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t];
    points.push({
      xMm: wa * a.xMm + w1 * c1.xMm + w2 * c2.xMm + wb * b.xMm,
      yMm: wa * a.yMm + w1 * c1.yMm + w2 * c2.yMm + wb * b.yMm,
    });
  }
  return points;
}
