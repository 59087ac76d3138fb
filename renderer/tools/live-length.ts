import type { PlanPoint } from '#core/geometry/place.ts';
import { planDistanceMm } from '#core/geometry/point.ts';
import type { OverlayLabel } from '../board/overlay.ts';
import { sayDrawnLength } from '../language/say-drawn-length.ts';
import type { MachineSettings } from '../session/machine-settings.ts';

/** The length of a line on the plan, in mm. */
export function planLengthMm(points: readonly PlanPoint[]): number {
  let sum = 0;
  for (let i = 1; i < points.length; i++) {
    sum += planDistanceMm(points[i - 1] as PlanPoint, points[i] as PlanPoint);
  }
  return sum;
}

/** The live figure beside the pointer: the whole line drawn so far. */
export function lengthLabel(
  points: readonly PlanPoint[],
  at: PlanPoint,
  lengths: MachineSettings['lengths'],
): readonly OverlayLabel[] {
  return points.length < 2 ? [] : [{ at, ...sayDrawnLength(planLengthMm(points), lengths) }];
}
