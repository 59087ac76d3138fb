import type { BodyPoint, PlanPoint } from '../../geometry/place.ts';
import { planDistanceMm } from '../../geometry/point.ts';
import { fail, type Result } from '../../quantity/result.ts';
import { samePlaceMm } from '../../quantity/tolerance.ts';
import type { MapDocument } from '../map-document.ts';
import { draftOf } from '../map-draft.ts';
import type { Patch } from '../patch.ts';
import type { Vertex } from '../records.ts';
import { keptOnPieces } from '../restation-segment.ts';
import { segmentLine } from '../segment-line.ts';

/**
 * Sets the scale by two drawn points and the true distance between them: everything drawn grows or
 * shrinks about the first point. Stations of clips and tags go along; typed figures stay as typed
 * (heights, measured lengths, clearances, bundle diameters). Refuses `same-point`, a distance that is not
 * above zero (`bad-value`), and a drawing that would grow beyond what a map holds (`bad-field`).
 * @example
 * setScale(sample.map, { from: { xMm: 0, yMm: 0 }, to: { xMm: 500, yMm: 0 }, distanceMm: 1000 }).value.changed[0][1].scale // => { from: { xMm: 0, yMm: 0 }, to: { xMm: 1000, yMm: 0 }, distanceMm: 1000 }
 */
export function setScale(
  map: MapDocument,
  input: { readonly from: PlanPoint; readonly to: PlanPoint; readonly distanceMm: number },
): Result<Patch> {
  const drawnMm = planDistanceMm(input.from, input.to);
  if (drawnMm < samePlaceMm) return fail({ code: 'same-point' });
  if (!(input.distanceMm > 0)) {
    return fail({ code: 'bad-value', field: 'distanceMm', value: input.distanceMm, allowed: '> 0' });
  }
  const factor = input.distanceMm / drawnMm;
  const xMm = (x: number): number => input.from.xMm + (x - input.from.xMm) * factor;
  const yMm = (y: number): number => input.from.yMm + (y - input.from.yMm) * factor;
  const plan = (point: PlanPoint): PlanPoint => ({ xMm: xMm(point.xMm), yMm: yMm(point.yMm) });
  const body = (point: BodyPoint): BodyPoint => ({ ...plan(point), zMm: point.zMm });
  const handle = (each: Vertex['handleIn']) => each && { dxMm: each.dxMm * factor, dyMm: each.dyMm * factor };
  const vertex = (each: Vertex): Vertex => ({
    ...plan(each),
    ...(each.handleIn ? { handleIn: handle(each.handleIn) } : {}),
    ...(each.handleOut ? { handleOut: handle(each.handleOut) } : {}),
  });

  const draft = draftOf(map);
  draft.put({
    ...map.details,
    centreLineYMm: yMm(map.details.centreLineYMm),
    scale: { from: plan(input.from), to: plan(input.to), distanceMm: input.distanceMm },
  });
  for (const outline of map.outlines.values()) {
    draft.put({ ...outline, vertices: outline.vertices.map(vertex) });
  }
  for (const underlay of map.underlays.values()) {
    draft.put({ ...underlay, origin: plan(underlay.origin), mmPerPx: underlay.mmPerPx * factor });
  }
  for (const panel of map.panels.values()) draft.put({ ...panel, area: panel.area.map(plan) });
  for (const spot of map.rubSpots.values()) draft.put({ ...spot, points: spot.points.map(body) });
  for (const node of map.nodes.values()) draft.put({ ...node, at: body(node.at) });
  for (const segment of map.segments.values()) {
    const grown = { ...segment, bends: segment.bends.map(body) };
    draft.put(keptOnPieces(grown, segmentLine(map, segment), segmentLine(draft.map, grown)));
  }
  return draft.finish();
}
