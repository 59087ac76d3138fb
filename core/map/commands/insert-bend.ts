import { nearestStation } from '../../geometry/nearest-station.ts';
import type { BodyPoint, PlanPoint } from '../../geometry/place.ts';
import { planDistanceMm } from '../../geometry/point.ts';
import { pieceAt, pointAtStation, type StationLine, stationLine } from '../../geometry/station-line.ts';
import type { SegmentId } from '../../quantity/id.ts';
import { fail, type Result } from '../../quantity/result.ts';
import { findRecord } from '../find-record.ts';
import type { MapDocument } from '../map-document.ts';
import type { Patch } from '../patch.ts';
import { segmentLine } from '../segment-line.ts';
import { stationOnRun } from '../station-on-run.ts';
import { changeSegment } from './change-segment.ts';

/**
 * Puts a bend into a run at a station of its drawn line; `at` pulls it off the line at once. Clips
 * and tags stay where they physically are. Refuses `not-found`, `zero-length` and `beyond-end`.
 * @example
 * insertBend(sample.map, { segmentId: 'segment:rear', stationMm: 200 }).value.changed[0][1].bends // => [{ xMm: 1200, yMm: 0, zMm: 0 }]
 */
export function insertBend(
  map: MapDocument,
  input: { readonly segmentId: SegmentId; readonly stationMm: number; readonly at?: BodyPoint },
): Result<Patch> {
  const found = findRecord(map.segments, input.segmentId);
  if (!found.ok) return found;
  const segment = found.value;
  const station = stationOnRun(map, segment, input.stationMm, 'stationMm');
  if (!station.ok) return station;
  const line = segmentLine(map, segment);
  const from = map.nodes.get(segment.fromNodeId);
  const to = map.nodes.get(segment.toNodeId);
  if (!line || !from || !to) return fail({ code: 'zero-length', thing: segment.id });
  const place = pointAtStation(line, station.value);
  const corners = stationLine([from.at, ...segment.bends, to.at]);
  const index = segment.smooth ? legNearest(corners, place) : pieceAt(line, station.value).piece;
  const bends = segment.bends.toSpliced(index, 0, input.at ?? place);
  return changeSegment(map, { segmentId: segment.id, changes: { bends } });
}

/** Which leg of the drawn corners a place on the rounded line belongs to. */
function legNearest(corners: StationLine, place: PlanPoint): number {
  const nearest = nearestStation(corners, place);
  const end = corners.points[nearest.piece + 1];
  const isLast = nearest.piece === corners.points.length - 2;
  return end && !isLast && planDistanceMm(end, place) === 0 ? nearest.piece + 1 : nearest.piece;
}
