import { cubicAt } from '#core/geometry/outline-curve.ts';
import type { PlanPoint } from '#core/geometry/place.ts';
import { changePanel } from '#core/map/commands/change-panel.ts';
import { changeRubSpot } from '#core/map/commands/change-rub-spot.ts';
import { insertBend } from '#core/map/commands/insert-bend.ts';
import { insertVertex } from '#core/map/commands/insert-vertex.ts';
import { removeBend } from '#core/map/commands/remove-bend.ts';
import { removeVertex } from '#core/map/commands/remove-vertex.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Patch } from '#core/map/patch.ts';
import type { Outline, Vertex } from '#core/map/records.ts';
import type { OutlineId, PanelId, RubSpotId, SegmentId } from '#core/quantity/id.ts';
import { fail, type Result } from '#core/quantity/result.ts';
import type { Handle } from '../../board/handles.ts';
import type { Hit } from '../../board/hit.ts';
import { nearestOnLine } from '../../board/nearest-on-line.ts';

/** Takes one corner of a thing out. A panel keeps three corners, a line two. */
export function removeCorner(map: MapDocument, { id, kind, index }: Handle): Result<Patch> {
  switch (kind) {
    case 'bend':
      return removeBend(map, { segmentId: id as SegmentId, index });
    case 'vertex':
      return removeVertex(map, { outlineId: id as OutlineId, index });
    case 'corner': {
      const panelId = id as PanelId;
      const area = map.panels.get(panelId)?.area ?? [];
      if (area.length <= 3) return fail({ code: 'too-few-points', needed: 3, found: area.length - 1 });
      return changePanel(map, { panelId, changes: { area: area.toSpliced(index, 1) } });
    }
    case 'rub-point': {
      const rubSpotId = id as RubSpotId;
      const points = map.rubSpots.get(rubSpotId)?.points ?? [];
      return changeRubSpot(map, { rubSpotId, changes: { points: points.toSpliced(index, 1) } });
    }
  }
}

/** Steps along a bent edge in which the place nearest to a press is looked for. */
const edgeSteps = 48;

/** The edge of an outline nearest to a place, and how far along it, 0 to 1, as its curve counts. */
function nearestOnEdges({ vertices, closed }: Outline, at: PlanPoint): { edge: number; share: number } {
  let best = { edge: 0, share: 0.5 };
  let bestMm = Number.POSITIVE_INFINITY;
  const edges = closed ? vertices.length : vertices.length - 1;
  for (let edge = 0; edge < edges; edge++) {
    const a = vertices[edge] as Vertex;
    const d = vertices[(edge + 1) % vertices.length] as Vertex;
    const b = { xMm: a.xMm + (a.handleOut?.dxMm ?? 0), yMm: a.yMm + (a.handleOut?.dyMm ?? 0) };
    const c = { xMm: d.xMm + (d.handleIn?.dxMm ?? 0), yMm: d.yMm + (d.handleIn?.dyMm ?? 0) };
    const straight = !a.handleOut && !d.handleIn;
    for (let step = 1; step < edgeSteps; step++) {
      const share = step / edgeSteps;
      const place = straight
        ? { xMm: a.xMm + (d.xMm - a.xMm) * share, yMm: a.yMm + (d.yMm - a.yMm) * share }
        : cubicAt(a, b, c, d, share);
      const mm = Math.hypot(place.xMm - at.xMm, place.yMm - at.yMm);
      if (mm >= bestMm) continue;
      bestMm = mm;
      best = { edge, share };
    }
  }
  return best;
}

/** Puts a corner where a selected thing was pressed twice; null where that makes no sense. */
export function insertCorner(map: MapDocument, hit: Hit): Result<Patch> | null {
  if (hit.kind === 'segment') return insertBend(map, { segmentId: hit.id, stationMm: hit.stationMm });
  if (hit.kind === 'outline') {
    const outlineId = hit.id as OutlineId;
    const outline = map.outlines.get(outlineId);
    if (!outline) return null;
    return insertVertex(map, { outlineId, ...nearestOnEdges(outline, hit.at) });
  }
  if (hit.kind === 'panel') {
    const panelId = hit.id as PanelId;
    const area = map.panels.get(panelId)?.area ?? [];
    const near = nearestOnLine([...area, ...area.slice(0, 1)], hit.at);
    return changePanel(map, { panelId, changes: { area: area.toSpliced(near.piece + 1, 0, near.at) } });
  }
  return null;
}
