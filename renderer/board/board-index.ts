import Flatbush from 'flatbush';
import { type Bounds, boundsOf } from '#core/geometry/bounds.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Outline, Panel, RubSpot, Segment } from '#core/map/records.ts';
import { outlineLine } from './outline-line.ts';
import { runLine } from './run-line.ts';

/** Finds what lies in a box of the plan without walking the map. Holds boxes only, never the truth. */
export interface BoardIndex {
  readonly map: MapDocument;
  readonly packed: Flatbush | null;
  readonly packedIds: readonly string[];
  /** The box each id was packed with, by identity of what it was made from. */
  readonly sources: ReadonlyMap<string, unknown>;
  /** Ids whose packed box no longer holds, and the boxes of what took their place. */
  readonly stale: ReadonlySet<string>;
  readonly loose: readonly { readonly id: string; readonly box: Bounds }[];
}

/** Beyond this many loose boxes packing anew is cheaper than walking them at every move. */
const mostLoose = 400;
const pointsPerBox = 24;

/** The index of a map; with the index of an earlier state only what differs is worked out again. */
export function boardIndex(map: MapDocument, earlier: BoardIndex | null = null): BoardIndex {
  if (earlier?.map === map) return earlier;
  if (earlier) {
    const updated = updatedIndex(map, earlier);
    if (updated) return updated;
  }
  const ids: string[] = [];
  const boxes: Bounds[] = [];
  const sources = new Map<string, unknown>();
  for (const [id, record] of placedRecords(map)) {
    sources.set(id, sourceOf(map, record));
    for (const box of boxesOf(map, record)) {
      ids.push(id);
      boxes.push(box);
    }
  }
  const packed = boxes.length > 0 ? new Flatbush(boxes.length) : null;
  for (const box of boxes) packed?.add(box.minXMm, box.minYMm, box.maxXMm, box.maxYMm);
  packed?.finish();
  return { map, packed, packedIds: ids, sources, stale: new Set(), loose: [] };
}

/** Ids of everything whose box touches the given one, each once, in no promised order. */
export function idsInBox(index: BoardIndex, box: Bounds): Set<string> {
  const found = new Set<string>();
  if (index.packed) {
    for (const i of index.packed.search(box.minXMm, box.minYMm, box.maxXMm, box.maxYMm)) {
      const id = index.packedIds[i] as string;
      if (!index.stale.has(id)) found.add(id);
    }
  }
  for (const { id, box: own } of index.loose) {
    const apart =
      own.minXMm > box.maxXMm ||
      own.maxXMm < box.minXMm ||
      own.minYMm > box.maxYMm ||
      own.maxYMm < box.minYMm;
    if (!apart) found.add(id);
  }
  return found;
}

/** The box round all that is drawn; null when nothing is. */
export function drawnBox(map: MapDocument): Bounds | null {
  const corners = [];
  for (const [, record] of placedRecords(map)) {
    for (const box of boxesOf(map, record)) {
      corners.push({ xMm: box.minXMm, yMm: box.minYMm }, { xMm: box.maxXMm, yMm: box.maxYMm });
    }
  }
  return boundsOf(corners);
}

type Placed = Outline | Panel | RubSpot | Segment | { readonly id: `node:${string}` };

function* placedRecords(map: MapDocument): Generator<readonly [string, Placed]> {
  yield* map.outlines;
  yield* map.panels;
  yield* map.segments;
  yield* map.rubSpots;
  yield* map.nodes;
}

/** What a record's boxes depend on; a run's also on where its nodes are. */
function sourceOf(map: MapDocument, record: Placed): unknown {
  return 'fromNodeId' in record ? runLine(map, record) : record;
}

function updatedIndex(map: MapDocument, earlier: BoardIndex): BoardIndex | null {
  const stale = new Set<string>();
  const loose: { id: string; box: Bounds }[] = [];
  let seen = 0;
  for (const [id, record] of placedRecords(map)) {
    const packed = earlier.sources.has(id);
    if (packed) seen++;
    if (packed && earlier.sources.get(id) === sourceOf(map, record)) continue;
    if (packed) stale.add(id);
    for (const box of boxesOf(map, record)) loose.push({ id, box });
    if (loose.length > mostLoose) return null;
  }
  if (seen < earlier.sources.size) {
    const present = new Set<string>();
    for (const [id] of placedRecords(map)) present.add(id);
    for (const id of earlier.sources.keys()) if (!present.has(id)) stale.add(id);
  }
  return { ...earlier, map, stale, loose };
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
