import type { PlanPoint } from '#core/geometry/place.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { idKind } from '#core/quantity/id.ts';

/** A corner of a selected thing that can be dragged by itself. */
export interface Handle {
  /** The record the corner belongs to. */
  readonly id: string;
  readonly kind: 'bend' | 'vertex' | 'corner' | 'rub-point';
  readonly index: number;
  readonly at: PlanPoint;
}

/** The corners of what is selected: bends of runs, vertices of outlines, corners of panels and rub spots. */
export function handlesOf(map: MapDocument, selection: readonly string[]): readonly Handle[] {
  return selection.flatMap((id) => {
    const [kind, points] = cornersOf(map, id);
    return points.map((at, index) => ({ id, kind, index, at }));
  });
}

function cornersOf(map: MapDocument, id: string): readonly [Handle['kind'], readonly PlanPoint[]] {
  switch (idKind(id)) {
    case 'segment':
      return ['bend', map.segments.get(id as `segment:${string}`)?.bends ?? []];
    case 'outline':
      return ['vertex', map.outlines.get(id as `outline:${string}`)?.vertices ?? []];
    case 'panel':
      return ['corner', map.panels.get(id as `panel:${string}`)?.area ?? []];
    case 'rub-spot':
      return ['rub-point', map.rubSpots.get(id as `rub-spot:${string}`)?.points ?? []];
    default:
      return ['vertex', []];
  }
}

/** The handle nearest to a point within reach; null when none is. */
export function handleAt(handles: readonly Handle[], at: PlanPoint, reachMm: number): Handle | null {
  let best: Handle | null = null;
  let bestMm = reachMm;
  for (const handle of handles) {
    const mm = Math.hypot(handle.at.xMm - at.xMm, handle.at.yMm - at.yMm);
    if (mm <= bestMm) {
      best = handle;
      bestMm = mm;
    }
  }
  return best;
}
