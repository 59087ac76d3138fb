import { type Bounds, boundsMeet } from '../geometry/bounds.ts';
import { squaresTouched } from '../geometry/plan-squares.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { Segment } from '../map/records.ts';
import type { SegmentId } from '../quantity/id.ts';
import { type RunShape, runShape } from './run-shape.ts';

/** Ids of the runs by squares of the plan, so that a spot finds its own in constant time. */
type RunGrid = Map<number, readonly SegmentId[]>;

const squareMm = 250;
const known = new WeakMap<MapDocument, RunGrid>();

/**
 * The runs whose plan rectangle meets a given one. The squares are laid once per map, or carried on from the
 * map before an edit.
 * @example
 * runsInBounds(sample.map, { minXMm: 700, minYMm: 0, maxXMm: 800, maxYMm: 9 }).length // => 1
 */
export function runsInBounds(map: MapDocument, bounds: Bounds): readonly Segment[] {
  const grid = gridOf(map);
  const ids = new Set<SegmentId>();
  for (const square of squaresTouched(bounds, squareMm)) for (const id of grid.get(square) ?? []) ids.add(id);
  const found: Segment[] = [];
  for (const id of ids) {
    const segment = map.segments.get(id);
    const shape = segment && runShape(map, segment);
    if (segment && shape && boundsMeet(shape.bounds, bounds)) found.push(segment);
  }
  return found;
}

/**
 * Hands the squares on to the map after an edit; `reshaped` are all the runs whose line differs.
 * @example
 * carryRunGrid(sample.map, sample.map, []) // => undefined
 */
export function carryRunGrid(before: MapDocument, after: MapDocument, reshaped: Iterable<SegmentId>): void {
  const grid = known.get(before);
  if (!grid || known.has(after)) return;
  const next = new Map(grid);
  for (const id of reshaped) {
    for (const square of squaresOfRun(before, id)) {
      next.set(
        square,
        (next.get(square) ?? []).filter((each) => each !== id),
      );
    }
    for (const square of squaresOfRun(after, id)) next.set(square, [...(next.get(square) ?? []), id]);
  }
  known.set(after, next);
}

function gridOf(map: MapDocument): RunGrid {
  const before = known.get(map);
  if (before) return before;
  const grid = new Map<number, SegmentId[]>();
  for (const id of map.segments.keys()) {
    for (const square of squaresOfRun(map, id)) {
      const held = grid.get(square);
      if (held) held.push(id);
      else grid.set(square, [id]);
    }
  }
  known.set(map, grid);
  return grid;
}

function squaresOfRun(map: MapDocument, id: SegmentId): readonly number[] {
  const segment = map.segments.get(id);
  const shape: RunShape | null | undefined = segment && runShape(map, segment);
  return shape ? squaresTouched(shape.bounds, squareMm) : [];
}
