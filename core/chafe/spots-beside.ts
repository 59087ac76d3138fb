import { pointAtStation } from '../geometry/station-line.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { RubSpot, Segment } from '../map/records.ts';
import { nearSpots } from './near-spots.ts';
import { runShape } from './run-shape.ts';
import { heightsCount, spotDistanceMm } from './spot-distance.ts';

/**
 * The mapped spots within a distance of one station of a run; none for a run half drawn. Heights count where
 * both were given some. `reachMm` bounds the search and should be the same from call to call.
 * @example
 * spotsBeside(sample.map, sample.middle, 240, 50)[0].id // => 'rub-spot:edge'
 */
export function spotsBeside(
  map: MapDocument,
  segment: Segment,
  stationMm: number,
  withinMm: number,
  reachMm = withinMm,
): readonly RubSpot[] {
  const shape = runShape(map, segment);
  if (!shape) return [];
  const near = nearSpots(map, segment, reachMm);
  if (near.length === 0) return [];
  const at = pointAtStation(shape.line, stationMm);
  return near
    .filter(({ spot }) => spotDistanceMm(spot, at, heightsCount(shape, spot)) <= withinMm)
    .map(({ spot }) => spot);
}
