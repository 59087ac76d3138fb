import { type Bounds, boundsMeet, boundsOf } from '../geometry/bounds.ts';
import { squaresTouched } from '../geometry/plan-squares.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { RubSpot } from '../map/records.ts';

/** Mapped spots by squares of the plan, so that a run finds its own in constant time. */
export interface SpotGrid {
  readonly near: (bounds: Bounds) => readonly RubSpot[];
}

const squareMm = 500;
const none: readonly RubSpot[] = [];
const known = new WeakMap<MapDocument['rubSpots'], SpotGrid>();

/**
 * Finds the spots whose rectangle meets a given one, in the map's order. Built once per table of spots.
 * @example
 * spotGrid(sample.map.rubSpots).near({ minXMm: 700, minYMm: 0, maxXMm: 800, maxYMm: 9 }).length // => 1
 */
export function spotGrid(spots: MapDocument['rubSpots']): SpotGrid {
  const before = known.get(spots);
  if (before) return before;
  const boxes: { readonly spot: RubSpot; readonly bounds: Bounds }[] = [];
  const squares = new Map<number, number[]>();
  for (const spot of spots.values()) {
    const bounds = boundsOf(spot.points);
    if (!bounds) continue;
    for (const square of squaresTouched(bounds, squareMm)) {
      const held = squares.get(square);
      if (held) held.push(boxes.length);
      else squares.set(square, [boxes.length]);
    }
    boxes.push({ spot, bounds });
  }
  const near = (bounds: Bounds): readonly RubSpot[] => {
    let found: Set<number> | null = null;
    for (const square of squaresTouched(bounds, squareMm)) {
      const held = squares.get(square);
      if (!held) continue;
      for (const index of held) {
        const box = boxes[index];
        if (box && boundsMeet(box.bounds, bounds)) {
          found ??= new Set();
          found.add(index);
        }
      }
    }
    if (!found) return none;
    return [...found].sort((a, b) => a - b).flatMap((index) => boxes[index]?.spot ?? []);
  };
  const grid = { near };
  known.set(spots, grid);
  return grid;
}
