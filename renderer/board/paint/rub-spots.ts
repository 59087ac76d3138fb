import type { PlanPoint } from '#core/geometry/place.ts';
import type { RubSpot } from '#core/map/records.ts';
import { type Camera, type ScreenPoint, toScreen } from '../camera.ts';
import { rubSpotsNearCircuit } from '../near-circuit.ts';
import type { Painter } from '../scene.ts';
import { markScale } from './mark-scale.ts';

/** Jagged marks whose size follows severity. */
export const paintRubSpots: Painter = (c, { map, rubSpots, camera, colours, lit }) => {
  const near = lit ? rubSpotsNearCircuit(map, lit) : null;
  c.lineJoin = 'miter';
  for (const spot of rubSpots) {
    c.strokeStyle = near && !near.has(spot.id) ? colours.faint : colours.ink;
    c.fillStyle = colours.paper;
    traceRubSpot(c, camera, spot);
  }
};

/** One rub spot: a burr for a point, teeth along a line, teeth round an area. */
export function traceRubSpot(c: CanvasRenderingContext2D, camera: Camera, spot: RubSpot): void {
  const scale = markScale(camera);
  const toothPx = (2.5 + 1.6 * spot.severity) * scale;
  c.lineWidth = 0.9 + 0.3 * spot.severity;
  c.beginPath();
  if (spot.shape === 'point' || spot.points.length < 2) {
    traceBurr(
      c,
      toScreen(camera, spot.points[0] as PlanPoint),
      (3 + 2.4 * spot.severity) * Math.max(0.65, scale),
    );
    c.fill();
    c.stroke();
    return;
  }
  const corners = spot.shape === 'area' ? [...spot.points, spot.points[0] as PlanPoint] : spot.points;
  for (let i = 0; i + 1 < corners.length; i++) {
    traceTeeth(
      c,
      toScreen(camera, corners[i] as PlanPoint),
      toScreen(camera, corners[i + 1] as PlanPoint),
      toothPx,
    );
  }
  c.stroke();
}

/** A four-toothed burr with unequal teeth, larger with `radiusPx`. */
export function traceBurr(c: CanvasRenderingContext2D, at: ScreenPoint, radiusPx: number): void {
  const teeth = 6;
  for (let i = 0; i < teeth * 2; i++) {
    const angle = (Math.PI * i) / teeth - Math.PI / 2;
    const reach = i % 2 === 0 ? radiusPx * (i % 4 === 0 ? 1.15 : 0.85) : radiusPx * 0.42;
    const x = at.xPx + Math.cos(angle) * reach;
    const y = at.yPx + Math.sin(angle) * reach;
    if (i === 0) c.moveTo(x, y);
    else c.lineTo(x, y);
  }
  c.closePath();
}

/** A saw edge from one place to another. */
export function traceTeeth(
  c: CanvasRenderingContext2D,
  from: ScreenPoint,
  to: ScreenPoint,
  toothPx: number,
): void {
  const dx = to.xPx - from.xPx;
  const dy = to.yPx - from.yPx;
  const length = Math.hypot(dx, dy);
  const steps = Math.max(1, Math.round(length / (toothPx * 1.6)));
  const acrossX = length > 0 ? (-dy / length) * toothPx : 0;
  const acrossY = length > 0 ? (dx / length) * toothPx : 0;
  c.moveTo(from.xPx, from.yPx);
  for (let i = 0; i < steps; i++) {
    const middle = (i + 0.75) / steps;
    const end = (i + 1) / steps;
    c.lineTo(from.xPx + dx * middle + acrossX, from.yPx + dy * middle + acrossY);
    c.lineTo(from.xPx + dx * end, from.yPx + dy * end);
  }
}
