import { nearestStation } from '#core/geometry/nearest-station.ts';
import type { PlanPoint } from '#core/geometry/place.ts';
import { changePanel } from '#core/map/commands/change-panel.ts';
import { changeRubSpot } from '#core/map/commands/change-rub-spot.ts';
import { moveBend } from '#core/map/commands/move-bend.ts';
import { moveClip } from '#core/map/commands/move-clip.ts';
import { moveThings } from '#core/map/commands/move-things.ts';
import { moveVertex } from '#core/map/commands/move-vertex.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Patch } from '#core/map/patch.ts';
import type { ClipId, PanelId, RubSpotId, SegmentId } from '#core/quantity/id.ts';
import { fail, type Result } from '#core/quantity/result.ts';
import type { Handle } from '../../board/handles.ts';
import { runLine } from '../../board/run-line.ts';
import { type CurveGrip, pullGrip } from './curve-grips.ts';

/** What a drag has hold of. */
export type Grip =
  | { readonly kind: 'handle'; readonly handle: Handle }
  | { readonly kind: 'curve'; readonly grip: CurveGrip; readonly alone: boolean }
  | { readonly kind: 'clip'; readonly id: ClipId; readonly segmentId: SegmentId }
  | { readonly kind: 'things'; readonly ids: readonly string[] };

/** The map with what is held moved from one place to another. */
export function dragPatch(map: MapDocument, grip: Grip, from: PlanPoint, to: PlanPoint): Result<Patch> {
  if (grip.kind === 'things') {
    return moveThings(map, { ids: grip.ids, dxMm: to.xMm - from.xMm, dyMm: to.yMm - from.yMm });
  }
  if (grip.kind === 'clip') {
    const segment = map.segments.get(grip.segmentId);
    const line = segment && runLine(map, segment);
    if (!line) return fail({ code: 'not-found', thing: grip.segmentId });
    const { stationMm } = nearestStation(line, to);
    return moveClip(map, { segmentId: grip.segmentId, clipId: grip.id, stationMm });
  }
  if (grip.kind === 'curve') return pullGrip(map, grip.grip, to, grip.alone);
  return dragHandle(map, grip.handle, to);
}

/** What the undo list calls such a drag. */
export function dragLabel(grip: Grip): string {
  if (grip.kind === 'clip') return 'edit.moveClip';
  if (grip.kind === 'things') return 'edit.moveThings';
  if (grip.kind === 'curve') return 'edit.bendEdge';
  return grip.handle.kind === 'bend' ? 'edit.moveBend' : 'edit.moveCorner';
}

function dragHandle(map: MapDocument, { id, kind, index }: Handle, to: PlanPoint): Result<Patch> {
  switch (kind) {
    case 'bend': {
      const segmentId = id as SegmentId;
      const zMm = map.segments.get(segmentId)?.bends[index]?.zMm ?? 0;
      return moveBend(map, { segmentId, index, at: { ...to, zMm } });
    }
    case 'vertex':
      return moveVertex(map, { outlineId: id as `outline:${string}`, index, at: to });
    case 'corner': {
      const panelId = id as PanelId;
      const area = map.panels.get(panelId)?.area ?? [];
      return changePanel(map, { panelId, changes: { area: area.with(index, to) } });
    }
    case 'rub-point': {
      const rubSpotId = id as RubSpotId;
      const points = map.rubSpots.get(rubSpotId)?.points ?? [];
      const zMm = points[index]?.zMm ?? 0;
      return changeRubSpot(map, { rubSpotId, changes: { points: points.with(index, { ...to, zMm }) } });
    }
  }
}
