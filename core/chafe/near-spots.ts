import { grownBounds } from '../geometry/bounds.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { RubSpot, Segment } from '../map/records.ts';
import { type RunShape, runShape } from './run-shape.ts';
import { runToSpotMm } from './spot-distance.ts';
import { spotGrid } from './spot-grid.ts';

/** A mapped spot within reach of a run. */
export interface NearSpot {
  readonly spot: RubSpot;
  /** Least distance from this run's centre line to it. */
  readonly distanceMm: number;
}

interface Remembered {
  readonly shape: RunShape;
  readonly table: MapDocument['rubSpots'];
  readonly reachMm: number;
  readonly near: readonly NearSpot[];
}

const none: readonly NearSpot[] = [];
const known = new WeakMap<Segment, Remembered>();

/**
 * The mapped spots within reach of a run, nearest place measured. Remembered while the run, its nodes and
 * the spots stay the same records; the same list comes back when nothing near has changed.
 * @example
 * nearSpots(sample.map, sample.middle, 200)[0].distanceMm // => 4
 */
export function nearSpots(map: MapDocument, segment: Segment, reachMm: number): readonly NearSpot[] {
  const shape = runShape(map, segment);
  if (!shape) return none;
  const before = known.get(segment);
  const sameRun = before && before.shape === shape && before.reachMm === reachMm;
  if (sameRun && before.table === map.rubSpots) return before.near;
  const spots = spotGrid(map.rubSpots).near(grownBounds(shape.bounds, reachMm));
  let near: readonly NearSpot[] = none;
  if (spots.length > 0) {
    near =
      sameRun && sameSpots(before.near, spots)
        ? before.near
        : measured(shape, spots, sameRun ? before.near : none);
  }
  known.set(segment, { shape, table: map.rubSpots, reachMm, near });
  return near;
}

const sameSpots = (near: readonly NearSpot[], spots: readonly RubSpot[]) =>
  near.length === spots.length && near.every((each, i) => each.spot === spots[i]);

const measured = (shape: RunShape, spots: readonly RubSpot[], before: readonly NearSpot[]) =>
  spots.map(
    (spot) => before.find((each) => each.spot === spot) ?? { spot, distanceMm: runToSpotMm(shape, spot) },
  );

const knownNearest = new WeakMap<MapDocument, Map<string, number>>();

/**
 * Distance of every spot to the run nearest to it, by spot id: a clearance someone gave belongs to that
 * place. Built once per map. O(runs).
 * @example
 * nearestRunMm(sample.map, 200).get('rub-spot:edge') // => 4
 */
export function nearestRunMm(map: MapDocument, reachMm: number): ReadonlyMap<string, number> {
  let nearest = knownNearest.get(map);
  if (!nearest) {
    nearest = new Map();
    for (const segment of map.segments.values()) {
      for (const { spot, distanceMm } of nearSpots(map, segment, reachMm)) {
        const so = nearest.get(spot.id);
        if (so === undefined || distanceMm < so) nearest.set(spot.id, distanceMm);
      }
    }
    knownNearest.set(map, nearest);
  }
  return nearest;
}
