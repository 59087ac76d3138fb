import { type Bounds, boundsMeet, boundsOf, grownBounds } from '../geometry/bounds.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { RubSpot } from '../map/records.ts';
import type { NodeId, SegmentId } from '../quantity/id.ts';
import { farthestRuns, nodeHolds } from './holding.ts';
import { nearSpots } from './near-spots.ts';
import { runShape } from './run-shape.ts';
import { runsAtNode } from './runs-at-node.ts';

/**
 * The runs whose hazard an edit may have touched: those changed, those that meet or hang with them, those
 * whose wires changed, and those near a changed spot or a spot whose nearest run changed. Runs that are gone
 * are among them. May name more than truly changed, never fewer. O(records) to compare the tables.
 * @example
 * touchedRuns(sample.map, { ...sample.map, rubSpots: new Map() }, 200).size // => 1
 */
export function touchedRuns(
  before: MapDocument,
  after: MapDocument,
  reachMm: number,
): ReadonlySet<SegmentId> {
  const touched = new Set<SegmentId>();
  // A moved node changes the shape of every run that meets there.
  const reshaped = new Set(changedKeys(before.segments, after.segments));
  const nodes = new Set<NodeId>();
  for (const nodeId of changedKeys(before.nodes, after.nodes)) {
    nodes.add(nodeId);
    for (const map of [before, after]) for (const run of runsAtNode(map, nodeId)) reshaped.add(run.id);
  }
  for (const id of reshaped) {
    touched.add(id);
    for (const map of [before, after]) {
      const segment = map.segments.get(id);
      if (segment) nodes.add(segment.fromNodeId).add(segment.toNodeId);
    }
  }
  for (const map of [before, after]) for (const id of nodes) spread(map, id, touched, farthestRuns);
  for (const id of changedKeys(before.circuits, after.circuits)) {
    for (const map of [before, after]) {
      for (const step of map.circuits.get(id)?.path ?? []) touched.add(step.segmentId);
    }
  }
  addNearSpots(before, after, reachMm, touched);
  return touched;
}

/** Every run that meets at a node, and on through nodes that do not hold. */
function spread(map: MapDocument, nodeId: NodeId, touched: Set<SegmentId>, runsLeft: number): void {
  const node = map.nodes.get(nodeId);
  for (const run of runsAtNode(map, nodeId)) {
    touched.add(run.id);
    if (runsLeft === 0 || (node && nodeHolds(node))) continue;
    spread(map, run.fromNodeId === nodeId ? run.toNodeId : run.fromNodeId, touched, runsLeft - 1);
  }
}

function addNearSpots(
  before: MapDocument,
  after: MapDocument,
  reachMm: number,
  touched: Set<SegmentId>,
): void {
  const spots = new Set<RubSpot>();
  for (const id of changedKeys(before.rubSpots, after.rubSpots)) {
    for (const map of [before, after]) {
      const spot = map.rubSpots.get(id);
      if (spot) spots.add(spot);
    }
  }
  for (const map of [before, after]) {
    for (const id of touched) {
      const run = map.segments.get(id);
      if (!run) continue;
      for (const { spot } of nearSpots(map, run, reachMm)) if (spot.clearanceMm !== null) spots.add(spot);
    }
  }
  const boxes: Bounds[] = [];
  for (const spot of spots) {
    const bounds = boundsOf(spot.points);
    if (bounds) boxes.push(grownBounds(bounds, reachMm));
  }
  if (boxes.length === 0) return;
  for (const run of after.segments.values()) {
    const shape = runShape(after, run);
    if (shape && boxes.some((box) => boundsMeet(box, shape.bounds))) touched.add(run.id);
  }
}

function changedKeys<K, R>(before: ReadonlyMap<K, R>, after: ReadonlyMap<K, R>): readonly K[] {
  if (before === after) return [];
  const changed: K[] = [];
  for (const [key, record] of after) if (before.get(key) !== record) changed.push(key);
  for (const key of before.keys()) if (!after.has(key)) changed.push(key);
  return changed;
}
