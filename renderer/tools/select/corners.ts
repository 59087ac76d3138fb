import { changePanel } from '#core/map/commands/change-panel.ts';
import { changeRubSpot } from '#core/map/commands/change-rub-spot.ts';
import { insertBend } from '#core/map/commands/insert-bend.ts';
import { insertVertex } from '#core/map/commands/insert-vertex.ts';
import { removeBend } from '#core/map/commands/remove-bend.ts';
import { removeVertex } from '#core/map/commands/remove-vertex.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Patch } from '#core/map/patch.ts';
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

/** Puts a corner where a selected thing was pressed twice; null where that makes no sense. */
export function insertCorner(map: MapDocument, hit: Hit): Result<Patch> | null {
  if (hit.kind === 'segment') return insertBend(map, { segmentId: hit.id, stationMm: hit.stationMm });
  if (hit.kind === 'outline') {
    const outlineId = hit.id as OutlineId;
    const outline = map.outlines.get(outlineId);
    if (!outline) return null;
    const corners = outline.closed
      ? [...outline.vertices, ...outline.vertices.slice(0, 1)]
      : outline.vertices;
    const { piece, share } = nearestOnLine(corners, hit.at);
    return insertVertex(map, { outlineId, edge: piece, share });
  }
  if (hit.kind === 'panel') {
    const panelId = hit.id as PanelId;
    const area = map.panels.get(panelId)?.area ?? [];
    const near = nearestOnLine([...area, ...area.slice(0, 1)], hit.at);
    return changePanel(map, { panelId, changes: { area: area.toSpliced(near.piece + 1, 0, near.at) } });
  }
  return null;
}
