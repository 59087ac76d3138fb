import type { PlanPoint } from '#core/geometry/place.ts';
import { idsInBox } from '../board/board-index.ts';
import { gridStepMm } from '../board/grid-step.ts';
import { nearestOnLine } from '../board/nearest-on-line.ts';
import { outlineLine } from '../board/outline-line.ts';
import { aligned } from './aligned.ts';
import type { PointerInput, ToolView } from './tool.ts';

/** Where a press would put a point, and what took hold of it. */
export interface Snapped {
  readonly at: PlanPoint;
  readonly on: 'corner' | 'edge' | 'centre-line' | 'grid' | null;
}

type Aim = Pick<PointerInput, 'at' | 'reachMm' | 'shift' | 'alt'>;

/**
 * The place a point takes hold of: a corner within reach, then an edge, then the centre line while drawing
 * mirrored, then the grid, as far as each is switched on. Shift keeps to eight directions from `last`
 * instead; alt lets nothing take hold. `without` names the thing being moved, which must not hold itself.
 */
export function snapped(
  { at, reachMm, shift, alt }: Aim,
  view: ToolView,
  last: PlanPoint | null = null,
  without: string | null = null,
): Snapped {
  if (alt) return { at, on: null };
  if (shift && last) return { at: aligned(last, at), on: null };
  const { snapping, mirror, grid } = view.choices;
  const held = snapping ? onCornerOrEdge(at, reachMm, view, without) : null;
  if (held) return held;
  const centreYMm = view.map.details.centreLineYMm;
  const step = gridStepMm(view.pxPerMm);
  const toGrid = (mm: number): number => (grid ? Math.round(mm / step) * step : mm);
  if (mirror && Math.abs(at.yMm - centreYMm) <= reachMm) {
    return { at: { xMm: toGrid(at.xMm), yMm: centreYMm }, on: 'centre-line' };
  }
  return grid ? { at: { xMm: toGrid(at.xMm), yMm: toGrid(at.yMm) }, on: 'grid' } : { at, on: null };
}

function onCornerOrEdge(
  at: PlanPoint,
  reachMm: number,
  view: ToolView,
  without: string | null,
): Snapped | null {
  const box = {
    minXMm: at.xMm - reachMm,
    maxXMm: at.xMm + reachMm,
    minYMm: at.yMm - reachMm,
    maxYMm: at.yMm + reachMm,
  };
  let corner: PlanPoint | null = null;
  let cornerMm = reachMm;
  let edge: PlanPoint | null = null;
  let edgeMm = reachMm;
  for (const id of idsInBox(view.index, box)) {
    if (id === without) continue;
    const shape = shapeOf(view, id);
    if (!shape) continue;
    for (const each of shape.corners) {
      const mm = Math.hypot(each.xMm - at.xMm, each.yMm - at.yMm);
      if (mm > cornerMm) continue;
      cornerMm = mm;
      corner = { xMm: each.xMm, yMm: each.yMm };
    }
    const near = nearestOnLine(shape.line, at);
    if (near.distanceMm > edgeMm) continue;
    edgeMm = near.distanceMm;
    edge = near.at;
  }
  if (corner) return { at: corner, on: 'corner' };
  return edge ? { at: edge, on: 'edge' } : null;
}

function shapeOf(
  { map }: ToolView,
  id: string,
): { readonly corners: readonly PlanPoint[]; readonly line: readonly PlanPoint[] } | null {
  const outline = map.outlines.get(id as `outline:${string}`);
  if (outline) return { corners: outline.vertices, line: outlineLine(outline) };
  const panel = map.panels.get(id as `panel:${string}`);
  return panel ? { corners: panel.area, line: [...panel.area, ...panel.area.slice(0, 1)] } : null;
}
