import type { PlanPoint } from '#core/geometry/place.ts';
import type { Camera } from '../camera.ts';

/** Adds a plan line to the current path, in screen pixels. */
export function traceLine(
  c: CanvasRenderingContext2D,
  camera: Camera,
  points: readonly PlanPoint[],
  closed = false,
): void {
  const { pxPerMm, xPx, yPx } = camera;
  for (let i = 0; i < points.length; i++) {
    const point = points[i] as PlanPoint;
    const x = xPx + point.xMm * pxPerMm;
    const y = yPx - point.yMm * pxPerMm;
    if (i === 0) c.moveTo(x, y);
    else c.lineTo(x, y);
  }
  if (closed) c.closePath();
}

/** Browsers paint one path of thousands of crossing lines slowly, and thousands of paths slowly too. */
const linesPerPath = 64;

/** Strokes many lines in one style, in paths of a few dozen each. */
export function strokeLines(
  c: CanvasRenderingContext2D,
  camera: Camera,
  lines: Iterable<readonly PlanPoint[]>,
): void {
  let inPath = 0;
  c.beginPath();
  for (const line of lines) {
    traceLine(c, camera, line);
    inPath++;
    if (inPath === linesPerPath) {
      c.stroke();
      c.beginPath();
      inPath = 0;
    }
  }
  if (inPath > 0) c.stroke();
}
