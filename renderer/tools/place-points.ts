import type { PlanPoint } from '#core/geometry/place.ts';
import { mirroredPoint } from '#core/map/mirror-geometry.ts';
import type { Overlay } from '../board/overlay.ts';
import { lengthLabel } from './live-length.ts';
import { type Snapped, snapped } from './snap.ts';
import type { ToolEvent, ToolView } from './tool.ts';

/** Points put down one by one, and where the next press would put one. */
export interface PlacedPoints {
  readonly points: readonly PlanPoint[];
  readonly pointer: PlanPoint | null;
  /** What the pointer has taken hold of. */
  readonly on: Snapped['on'];
}

export const noPoints: PlacedPoints = { points: [], pointer: null, on: null };

export type PlacedStep =
  | { readonly state: PlacedPoints; readonly finished: null }
  | {
      readonly state: PlacedPoints;
      readonly finished: 'open' | 'closed';
      readonly points: readonly PlanPoint[];
    };

/**
 * Placing points: a press puts one down (shift keeps to the eight directions), a press on the first one
 * closes, Enter or a double press ends, Backspace takes the last one back, Escape drops all.
 */
export function placePoints(state: PlacedPoints, event: ToolEvent, view: ToolView): PlacedStep {
  if (event.type === 'key') {
    if (event.key === 'Escape') return going(noPoints);
    if (event.key === 'Enter') return ended(state, 'open');
    return going({ ...state, points: state.points.slice(0, -1) });
  }
  if (event.type === 'double') return ended(state, 'open');
  const last = state.points.at(-1);
  const { at, on } = snapped(event, view, last);
  if (event.type !== 'down') return going({ ...state, pointer: at, on });
  const first = state.points[0];
  if (first && state.points.length >= 3 && near(first, event.at, event.reachMm))
    return ended(state, 'closed');
  // A press on the point just put down is a slow double press, not a second point there.
  if (last && near(last, at, event.reachMm / 3)) return going(state);
  return going({ points: [...state.points, at], pointer: at, on });
}

const going = (state: PlacedPoints): PlacedStep => ({ state, finished: null });
const ended = (state: PlacedPoints, finished: 'open' | 'closed'): PlacedStep => ({
  state: { points: [], pointer: state.pointer, on: null },
  finished,
  points: state.points,
});

const near = (a: PlanPoint, b: PlanPoint, reachMm: number): boolean =>
  Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm) <= reachMm;

/** The line placed so far, the piece that follows the pointer, their twins when mirrored, and the length. */
export function placedOverlay(state: PlacedPoints, area: boolean, view: ToolView): Overlay {
  const { points, pointer, on } = state;
  const last = points.at(-1);
  const whole = pointer ? [...points, pointer] : points;
  const first = points[0];
  const closing =
    first && pointer && points.length >= 3 && near(first, pointer, 9 / view.pxPerMm) ? [first] : [];
  const held = pointer && (on === 'corner' || on === 'edge' || on === 'centre-line') ? [pointer] : [];
  const centre = view.map.details.centreLineYMm;
  const twin = whole.map(({ xMm, yMm }) => mirroredPoint({ xMm, yMm }, centre));
  return {
    lines: [
      ...(points.length > 1 ? [{ points, closed: false, style: 'firm' as const }] : []),
      ...(last && pointer ? [{ points: [last, pointer], closed: false, style: 'loose' as const }] : []),
      ...(area && first && pointer && points.length > 1
        ? [{ points: [pointer, first], closed: false, style: 'loose' as const }]
        : []),
      ...(view.choices.mirror && twin.length > 1
        ? [{ points: twin, closed: area, style: 'loose' as const }]
        : []),
    ],
    points: [
      ...points.map((at) => ({ at, style: 'placed' as const })),
      ...[...closing, ...held].map((at) => ({ at, style: 'snap' as const })),
    ],
    labels: pointer && points.length > 0 ? lengthLabel(whole, pointer, view.lengths) : [],
    box: null,
  };
}
