import { boundsApartMm, boundsOf, grownBounds } from '../geometry/bounds.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { RubSpot, Segment } from '../map/records.ts';
import { runsInBounds } from './run-grid.ts';
import { placesAlong } from './run-places.ts';
import { type RunShape, runShape } from './run-shape.ts';
import { heightsCount, runToSpotMm } from './spot-distance.ts';
import { spotForm } from './spot-form.ts';
import { spotGrid } from './spot-grid.ts';
import { type SpotWay, spotWay } from './spot-way.ts';

/** A mapped spot within reach of a run. */
export class NearSpot {
  readonly spot: RubSpot;
  /** No nearer than this: from plan rectangle to plan rectangle, mm. */
  readonly leastMm: number;
  /** Heights count between the two. */
  readonly inSpace: boolean;
  readonly #shape: RunShape;
  #distanceMm = -1;
  #way: SpotWay | null = null;
  constructor(shape: RunShape, spot: RubSpot) {
    this.spot = spot;
    this.inSpace = heightsCount(shape, spot);
    this.#shape = shape;
    const bounds = boundsOf(spot.points);
    this.leastMm = bounds ? boundsApartMm(shape.bounds, bounds) : Number.POSITIVE_INFINITY;
  }

  /**
   * The run's way past it, its cells being so many, as far as it lies within reach: measured when first asked for,
   * and anew when asked to look farther.
   */
  wayWithin(reachMm: number, cellCount: number): SpotWay {
    if (this.#way?.cellCount === cellCount && this.#way.reachMm >= reachMm) return this.#way;
    const { line } = this.#shape;
    const form = spotForm(this.spot, this.inSpace);
    const places = placesAlong(line, 2 * cellCount);
    this.#way = spotWay(form, places, cellCount, line.lengthMm / cellCount, reachMm);
    return this.#way;
  }

  /** Least distance from this run's centre line to it, measured when first asked. */
  get distanceMm(): number {
    if (this.#distanceMm < 0) this.#distanceMm = runToSpotMm(this.#shape, this.spot);
    return this.#distanceMm;
  }
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
  spots.map((spot) => before.find((each) => each.spot === spot) ?? new NearSpot(shape, spot));

const knownNearest = new WeakMap<MapDocument, Map<string, number>>();

function nearestTable(map: MapDocument): Map<string, number> {
  let table = knownNearest.get(map);
  if (!table) {
    table = new Map();
    knownNearest.set(map, table);
  }
  return table;
}

/**
 * Distance of a spot to the run nearest to it, in mm: a clearance someone gave belongs to that place. Infinite
 * when no run is within reach. Remembered for the map. O(runs near the first time).
 * @example
 * nearestRunMm(sample.map, sample.rubSpot, 200) // => 4
 */
export function nearestRunMm(map: MapDocument, spot: RubSpot, reachMm: number): number {
  return nearestIn(nearestTable(map), map, spot, reachMm);
}

/**
 * As `nearestRunMm` for each of a run's near spots with a given clearance; 0 for one without.
 * @example
 * nearestRunsMm(sample.map, nearSpots(sample.map, sample.middle, 200), 200) // => [0]
 */
export function nearestRunsMm(
  map: MapDocument,
  near: readonly NearSpot[],
  reachMm: number,
): readonly number[] {
  const table = nearestTable(map);
  const nearest: number[] = [];
  for (const { spot } of near) {
    nearest.push(spot.clearanceMm === null ? 0 : nearestIn(table, map, spot, reachMm));
  }
  return nearest;
}

function nearestIn(table: Map<string, number>, map: MapDocument, spot: RubSpot, reachMm: number): number {
  const before = table.get(spot.id);
  if (before !== undefined) return before;
  let nearest = Number.POSITIVE_INFINITY;
  const bounds = boundsOf(spot.points);
  for (const segment of bounds ? runsInBounds(map, grownBounds(bounds, reachMm)) : []) {
    for (const near of nearSpots(map, segment, reachMm)) {
      if (near.spot === spot && near.leastMm < nearest) nearest = Math.min(nearest, near.distanceMm);
    }
  }
  table.set(spot.id, nearest);
  return nearest;
}

/**
 * Hands the known distances on to the map after an edit, but for those of spots the edit may have changed.
 * @example
 * carryNearestRuns(sample.map, sample.map, new Set()) // => undefined
 */
export function carryNearestRuns(before: MapDocument, after: MapDocument, stale: ReadonlySet<string>): void {
  const table = knownNearest.get(before);
  if (!table || knownNearest.has(after)) return;
  const next = new Map(table);
  for (const id of stale) next.delete(id);
  knownNearest.set(after, next);
}
