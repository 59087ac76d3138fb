import type { Bounds } from '#core/geometry/bounds.ts';
import type { PlanPoint } from '#core/geometry/place.ts';

/** What a drawing action shows on top of the board while it is under way. */
export interface Overlay {
  readonly lines: readonly OverlayLine[];
  readonly points: readonly OverlayPoint[];
  readonly labels: readonly OverlayLabel[];
  readonly box: Bounds | null;
}

export interface OverlayLine {
  readonly points: readonly PlanPoint[];
  readonly closed: boolean;
  /**
   * Firm: placed already. Loose: follows the pointer. Measure: between two points being measured. Band: a wide
   * one under the run it lies along, so that the run stays in sight; thin where nobody confirmed it.
   */
  readonly style: 'firm' | 'loose' | 'measure' | 'band' | 'thin-band';
}

export interface OverlayPoint {
  readonly at: PlanPoint;
  /** Placed: put down already. Snap: what the next press would take hold of. Grip: a round one to pull. */
  readonly style: 'placed' | 'snap' | 'grip';
}

/** A live figure; the unit is set lighter than the number. */
export interface OverlayLabel {
  readonly at: PlanPoint;
  readonly text: string;
  readonly unit: string;
}

export const emptyOverlay: Overlay = { lines: [], points: [], labels: [], box: null };

/** Marks with what a drawing action shows over them. */
export function overlaid(marks: Overlay, action: Overlay): Overlay {
  if (marks === emptyOverlay) return action;
  return {
    lines: [...marks.lines, ...action.lines],
    points: [...marks.points, ...action.points],
    labels: [...marks.labels, ...action.labels],
    box: action.box,
  };
}
