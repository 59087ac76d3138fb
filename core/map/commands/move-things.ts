import type { PlanPoint } from '../../geometry/place.ts';
import { idKind, type NodeId, type SegmentId } from '../../quantity/id.ts';
import { fail, type Result } from '../../quantity/result.ts';
import type { MapDocument } from '../map-document.ts';
import { draftOf, recordOf } from '../map-draft.ts';
import type { Patch } from '../patch.ts';
import type { MapNode, Outline, Panel, RubSpot, Segment, Underlay } from '../records.ts';
import { keptInPlace } from '../restation-segment.ts';
import { segmentLine } from '../segment-line.ts';

/**
 * Moves a mixed selection by the same distance in plan: outlines, pictures, nodes, runs (with both their
 * nodes), panel areas and rub spots. A run whose both nodes move goes along whole, so what sits on it
 * keeps its station; a run of which only one end moves is stretched, and clips and tags stay where they
 * physically are. Circuits named in the selection have no place of their own. Refuses `not-found` and
 * `bad-field`.
 * @example
 * moveThings(sample.map, { ids: ['panel:seat', 'node:far'], dxMm: 0, dyMm: 50 }).value.changed.map(([, after]) => after.id) // => ['panel:seat', 'node:far']
 */
export function moveThings(
  map: MapDocument,
  input: { readonly ids: readonly string[]; readonly dxMm: number; readonly dyMm: number },
): Result<Patch> {
  const moved = <P extends PlanPoint>(point: P): P => ({
    ...point,
    xMm: point.xMm + input.dxMm,
    yMm: point.yMm + input.dyMm,
  });
  const draft = draftOf(map);
  const nodeIds = new Set<NodeId>();
  const segmentIds = new Set<SegmentId>();
  for (const id of new Set(input.ids)) {
    const record = recordOf(map, id);
    if (!record) return fail({ code: 'not-found', thing: id });
    switch (idKind(id)) {
      case 'outline': {
        const outline = record as Outline;
        draft.put({ ...outline, vertices: outline.vertices.map(moved) });
        break;
      }
      case 'underlay': {
        const underlay = record as Underlay;
        draft.put({ ...underlay, origin: moved(underlay.origin) });
        break;
      }
      case 'panel': {
        const panel = record as Panel;
        draft.put({ ...panel, area: panel.area.map(moved) });
        break;
      }
      case 'rub-spot': {
        const spot = record as RubSpot;
        draft.put({ ...spot, points: spot.points.map(moved) });
        break;
      }
      case 'node':
        nodeIds.add((record as MapNode).id);
        break;
      case 'segment': {
        const segment = record as Segment;
        segmentIds.add(segment.id);
        nodeIds.add(segment.fromNodeId).add(segment.toNodeId);
        break;
      }
      default:
    }
  }
  for (const nodeId of nodeIds) {
    const node = map.nodes.get(nodeId);
    if (node) draft.put({ ...node, at: moved(node.at) });
  }
  for (const segment of map.segments.values()) {
    const from = nodeIds.has(segment.fromNodeId);
    const to = nodeIds.has(segment.toNodeId);
    const whole = (from && to) || segmentIds.has(segment.id);
    if (whole) {
      if (segment.bends.length > 0) draft.put({ ...segment, bends: segment.bends.map(moved) });
    } else if ((from || to) && segment.clips.length + segment.tags.length > 0) {
      draft.put(keptInPlace(segment, segmentLine(map, segment), segmentLine(draft.map, segment)));
    }
  }
  return draft.finish();
}
