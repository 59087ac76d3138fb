import Flatbush from 'flatbush';
import { type Bounds, boundsOf } from '#core/geometry/bounds.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { recordOf } from '#core/map/map-draft.ts';
import type { Outline, Panel, RubSpot, Segment } from '#core/map/records.ts';
import { changedThings } from './changed-things.ts';
import { outlineLine } from './outline-line.ts';
import { runLine } from './run-line.ts';

/** Finds what lies in a box of the plan without walking the map. Holds boxes only, never the truth. */
export interface BoardIndex {
  readonly map: MapDocument;
  readonly packed: Flatbush | null;
  readonly packedIds: readonly string[];
  /** Ids whose packed box no longer holds, and the boxes of what took their place. */
  readonly stale: ReadonlySet<string>;
  readonly loose: readonly { readonly id: string; readonly box: Bounds }[];
}

/** Beyond this many loose boxes packing anew is cheaper than walking them at every move. */
const mostLoose = 400;
const pointsPerBox = 24;
const kept = new WeakMap<MapDocument, BoardIndex>();

/**
 * The index of a map, made once for each state of it; with the index of an earlier state only what
 * differs is worked out again.
 */
export function boardIndex(map: MapDocument, earlier: BoardIndex | null = null): BoardIndex {
  const known = kept.get(map);
  if (known) return known;
  const index = (earlier && updatedIndex(map, earlier)) ?? packedIndex(map);
  kept.set(map, index);
  return index;
}

function packedIndex(map: MapDocument): BoardIndex {
  const ids: string[] = [];
  const boxes: Bounds[] = [];
  for (const [id, record] of placedRecords(map)) {
    for (const box of boxesOf(map, record)) {
      ids.push(id);
      boxes.push(box);
    }
  }
  const packed = boxes.length > 0 ? new Flatbush(boxes.length) : null;
  for (const box of boxes) packed?.add(box.minXMm, box.minYMm, box.maxXMm, box.maxYMm);
  packed?.finish();
  return { map, packed, packedIds: ids, stale: new Set(), loose: [] };
}

/** Ids of everything whose box touches the given one, each once, in no promised order. */
export function idsInBox(index: BoardIndex, box: Bounds): Set<string> {
  return new Set(walkBox(index, box));
}

/** Whether more than `most` of the things in a box are of the wanted sort; stops as soon as that is known. */
export function moreInBox(
  index: BoardIndex,
  box: Bounds,
  most: number,
  wanted: (id: string) => boolean,
): boolean {
  const found = new Set<string>();
  for (const id of walkBox(index, box)) {
    if (wanted(id)) found.add(id);
    if (found.size > most) return true;
  }
  return false;
}

/** What touches a box; a long line comes once for each of its boxes. */
function* walkBox(index: BoardIndex, box: Bounds): Generator<string> {
  const { packed, packedIds, stale, loose } = index;
  for (const i of packed?.search(box.minXMm, box.minYMm, box.maxXMm, box.maxYMm) ?? []) {
    const id = packedIds[i] as string;
    if (stale.size === 0 || !stale.has(id)) yield id;
  }
  for (const { id, box: own } of loose) {
    const apart =
      own.minXMm > box.maxXMm ||
      own.maxXMm < box.minXMm ||
      own.minYMm > box.maxYMm ||
      own.maxYMm < box.minYMm;
    if (!apart) yield id;
  }
}

/** A box that holds all that is drawn, found without walking the map; what was deleted may still widen it. */
export function indexBox({ packed, loose }: BoardIndex): Bounds | null {
  const corners = loose.flatMap(({ box }) => cornersOf(box));
  if (packed) {
    const { minX, minY, maxX, maxY } = packed;
    corners.push(...cornersOf({ minXMm: minX, minYMm: minY, maxXMm: maxX, maxYMm: maxY }));
  }
  return boundsOf(corners);
}

/** The box round all that is drawn; null when nothing is. */
export function drawnBox(map: MapDocument): Bounds | null {
  const corners = [];
  for (const [, record] of placedRecords(map)) {
    for (const box of boxesOf(map, record)) corners.push(...cornersOf(box));
  }
  return boundsOf(corners);
}

/** A car's length of paper, where nothing is drawn yet. */
const firstBox: Bounds = { minXMm: 0, minYMm: -900, maxXMm: 4_200, maxYMm: 900 };

/** The box round all that is drawn, or a car's length of paper. Takes a look at everything drawn. */
export function wholeBox(map: MapDocument): Bounds {
  return drawnBox(map) ?? firstBox;
}

const cornersOf = ({ minXMm, minYMm, maxXMm, maxYMm }: Bounds) => [
  { xMm: minXMm, yMm: minYMm },
  { xMm: maxXMm, yMm: maxYMm },
];

type Placed = Outline | Panel | RubSpot | Segment | { readonly id: `node:${string}` };

function* placedRecords(map: MapDocument): Generator<readonly [string, Placed]> {
  yield* map.outlines;
  yield* map.panels;
  yield* map.segments;
  yield* map.rubSpots;
  yield* map.nodes;
}

function updatedIndex(map: MapDocument, earlier: BoardIndex): BoardIndex | null {
  const changed = changedThings(earlier.map, map);
  if (changed.size > mostLoose) return null;
  const loose = earlier.loose.filter(({ id }) => !changed.has(id));
  for (const id of changed) {
    const record = recordOf(map, id);
    if (!record) continue;
    for (const box of boxesOf(map, record as Placed)) loose.push({ id, box });
  }
  if (loose.length > mostLoose) return null;
  return { ...earlier, map, stale: new Set([...earlier.stale, ...changed]), loose };
}

function boxesOf(map: MapDocument, record: Placed): Bounds[] {
  if ('fromNodeId' in record) return lineBoxes(runLine(map, record)?.points ?? []);
  if ('vertices' in record) return lineBoxes(outlineLine(record));
  if ('area' in record) return single(boundsOf(record.area));
  if ('points' in record) return single(boundsOf(record.points));
  const node = map.nodes.get(record.id);
  return single(node ? boundsOf([node.at]) : null);
}

const single = (box: Bounds | null): Bounds[] => (box ? [box] : []);

/** A long line gets a box for each stretch of it, so that a bend round the car is not one huge box. */
function lineBoxes(points: readonly { readonly xMm: number; readonly yMm: number }[]): Bounds[] {
  const boxes: Bounds[] = [];
  for (let i = 0; i + 1 < points.length; i += pointsPerBox) {
    boxes.push(...single(boundsOf(points.slice(i, i + pointsPerBox + 1))));
  }
  return boxes;
}
