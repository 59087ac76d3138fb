import type { Vertex } from './records.ts';

/** A point an outline passes; with a third part `'corner'` the edges meet there without rounding. */
export type DrawnPoint = readonly [xMm: number, yMm: number, corner?: 'corner'];

/** Share of an edge's length that its handles reach; about a third keeps a curve calm (judgement). */
const handleShare = 0.36;

/** Rounded alike on both sides of zero, so that a mirrored outline stays its mirror image; never minus zero. */
const wholeMm = (mm: number): number => Math.sign(mm) * Math.round(Math.abs(mm)) + 0;

/**
 * Outline corners whose handles make a calm curve through some points: at each point the curve runs
 * parallel to the line between its neighbours (Catmull and Rom's tangent, from memory). Ends of an open
 * outline and points marked `corner` have no handles. Whole millimetres.
 * @example
 * curveThrough([[0, 0], [100, 50], [200, 0]], false)[1] // => { xMm: 100, yMm: 50, handleIn: { dxMm: -40, dyMm: 0 }, handleOut: { dxMm: 40, dyMm: 0 } }
 */
export function curveThrough(points: readonly DrawnPoint[], closed: boolean): Vertex[] {
  const count = points.length;
  return points.map((point, i) => {
    const [xMm, yMm, corner] = point;
    const vertex = { xMm: wholeMm(xMm), yMm: wholeMm(yMm) };
    const before = points[closed ? (i + count - 1) % count : i - 1];
    const after = points[closed ? (i + 1) % count : i + 1];
    if (corner || !before || !after) return vertex;
    const alongX = after[0] - before[0];
    const alongY = after[1] - before[1];
    const along = Math.hypot(alongX, alongY);
    if (along === 0) return vertex;
    const handle = (reachMm: number) => ({
      dxMm: wholeMm((alongX / along) * reachMm),
      dyMm: wholeMm((alongY / along) * reachMm),
    });
    return {
      ...vertex,
      handleIn: handle(-handleShare * Math.hypot(xMm - before[0], yMm - before[1])),
      handleOut: handle(handleShare * Math.hypot(after[0] - xMm, after[1] - yMm)),
    };
  });
}
