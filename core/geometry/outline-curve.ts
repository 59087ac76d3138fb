import type { PlanPoint } from './place.ts';

/** A corner whose handles, when present, bend the edges that meet there (cubic curves). */
export interface CurveVertex extends PlanPoint {
  readonly handleIn?: { readonly dxMm: number; readonly dyMm: number } | undefined;
  readonly handleOut?: { readonly dxMm: number; readonly dyMm: number } | undefined;
}

/**
 * Number of chords that keep them within `toleranceMm` of a cubic: n = sqrt(3 * 2 / 8 * d / tolerance),
 * d the largest second difference of its control points (Wang's bound for degree 3, from memory).
 */
function chordCount(a: PlanPoint, b: PlanPoint, c: PlanPoint, d: PlanPoint, toleranceMm: number): number {
  const bend = Math.max(
    Math.hypot(a.xMm - 2 * b.xMm + c.xMm, a.yMm - 2 * b.yMm + c.yMm),
    Math.hypot(b.xMm - 2 * c.xMm + d.xMm, b.yMm - 2 * c.yMm + d.yMm),
  );
  return Math.min(200, Math.max(1, Math.ceil(Math.sqrt((0.75 * bend) / toleranceMm))));
}

/**
 * An outline as straight pieces: edges with handles become chords that stay within `toleranceMm` of the
 * cubic curve. A closed outline ends where it began, with its first point given again.
 * @example
 * flattenOutline([{ xMm: 0, yMm: 0 }, { xMm: 5, yMm: 0 }], false) // => [{ xMm: 0, yMm: 0 }, { xMm: 5, yMm: 0 }]
 */
export function flattenOutline(
  vertices: readonly CurveVertex[],
  closed: boolean,
  toleranceMm = 1,
): readonly PlanPoint[] {
  const first = vertices[0];
  if (!first) return [];
  const points: PlanPoint[] = [{ xMm: first.xMm, yMm: first.yMm }];
  const edges = closed ? vertices.length : vertices.length - 1;
  for (let i = 0; i < edges; i++) {
    const a = vertices[i] as CurveVertex;
    const d = vertices[(i + 1) % vertices.length] as CurveVertex;
    if (a.handleOut || d.handleIn) {
      const b = { xMm: a.xMm + (a.handleOut?.dxMm ?? 0), yMm: a.yMm + (a.handleOut?.dyMm ?? 0) };
      const c = { xMm: d.xMm + (d.handleIn?.dxMm ?? 0), yMm: d.yMm + (d.handleIn?.dyMm ?? 0) };
      const chords = chordCount(a, b, c, d, toleranceMm);
      for (let k = 1; k < chords; k++) points.push(cubicAt(a, b, c, d, k / chords));
    }
    points.push({ xMm: d.xMm, yMm: d.yMm });
  }
  return points;
}

/**
 * The point of a cubic Bezier curve at parameter t (0 to 1): a and d are its ends, b and c its handles.
 * @example
 * cubicAt({ xMm: 0, yMm: 0 }, { xMm: 0, yMm: 8 }, { xMm: 8, yMm: 8 }, { xMm: 8, yMm: 0 }, 0.5) // => { xMm: 4, yMm: 6 }
 */
export function cubicAt(a: PlanPoint, b: PlanPoint, c: PlanPoint, d: PlanPoint, t: number): PlanPoint {
  const u = 1 - t;
  const wa = u * u * u;
  const wb = 3 * u * u * t;
  const wc = 3 * u * t * t;
  const wd = t * t * t;
  return {
    xMm: wa * a.xMm + wb * b.xMm + wc * c.xMm + wd * d.xMm,
    yMm: wa * a.yMm + wb * b.yMm + wc * c.yMm + wd * d.yMm,
  };
}
