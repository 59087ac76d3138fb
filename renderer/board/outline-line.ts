import { flattenOutline } from '#core/geometry/outline-curve.ts';
import type { PlanPoint } from '#core/geometry/place.ts';
import type { Outline } from '#core/map/records.ts';

const kept = new WeakMap<Outline, readonly PlanPoint[]>();

/** The outline as one line of plan points, worked out once for each state of it. A closed one ends where it began. */
export function outlineLine(outline: Outline): readonly PlanPoint[] {
  const known = kept.get(outline);
  if (known) return known;
  const line = flattenOutline(outline.vertices, outline.closed);
  kept.set(outline, line);
  return line;
}
