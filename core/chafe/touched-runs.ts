import { boundsOf, grownBounds } from '../geometry/bounds.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { RubSpot, Segment } from '../map/records.ts';
import type { NodeId, SegmentId } from '../quantity/id.ts';
import { samePlaceMm } from '../quantity/tolerance.ts';
import { farthestRuns, nodeHolds } from './holding.ts';
import { carryNearestRuns, nearestRunMm, nearSpots } from './near-spots.ts';
import { carryRunGrid, runsInBounds } from './run-grid.ts';
import { runShape } from './run-shape.ts';
import { carryRunsAtNode, runsAtNode } from './runs-at-node.ts';

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
  const changed = changedKeys(before.segments, after.segments);
  carryRunsAtNode(before, after, changed);
  const reshaped = new Set(changed);
  // Nodes whose runs meet something that changed, and those past which the loom may hang otherwise.
  const met = new Set<NodeId>();
  const hanging = new Set<NodeId>();
  // A moved node changes the shape of every run that meets there.
  for (const nodeId of changedKeys(before.nodes, after.nodes)) {
    const [was, is] = [before.nodes.get(nodeId), after.nodes.get(nodeId)];
    met.add(nodeId);
    if (was?.kind !== is?.kind) hanging.add(nodeId);
    for (const map of [before, after]) for (const run of runsAtNode(map, nodeId)) reshaped.add(run.id);
  }
  for (const id of reshaped) {
    touched.add(id);
    const ends = heldAsBefore(before, after, id) ? met : hanging;
    for (const map of [before, after]) {
      const segment = map.segments.get(id);
      if (segment) ends.add(segment.fromNodeId).add(segment.toNodeId);
    }
  }
  for (const map of [before, after]) {
    for (const id of met) for (const run of runsAtNode(map, id)) touched.add(run.id);
    for (const id of hanging) spread(map, id, touched, farthestRuns);
  }
  for (const id of changedKeys(before.circuits, after.circuits)) {
    for (const map of [before, after]) {
      for (const step of map.circuits.get(id)?.path ?? []) touched.add(step.segmentId);
    }
  }
  for (const id of reshaped) if (sameLine(before, after, id)) reshaped.delete(id);
  carryRunGrid(before, after, reshaped);
  addNearSpots(before, after, reachMm, reshaped, touched);
  return touched;
}

/** Whether a run is drawn as before: its record may have changed in other ways. */
function sameLine(before: MapDocument, after: MapDocument, id: SegmentId): boolean {
  const was = before.segments.get(id);
  const is = after.segments.get(id);
  return (
    was !== undefined &&
    is !== undefined &&
    was.bends === is.bends &&
    was.smooth === is.smooth &&
    before.nodes.get(was.fromNodeId)?.at === after.nodes.get(is.fromNodeId)?.at &&
    before.nodes.get(was.toNodeId)?.at === after.nodes.get(is.toNodeId)?.at
  );
}

/** Whether a run holds its neighbours as before: drawn alike between the same nodes, with the same clips. */
function heldAsBefore(before: MapDocument, after: MapDocument, id: SegmentId): boolean {
  const was = before.segments.get(id);
  const is = after.segments.get(id);
  return (
    was?.clips === is?.clips &&
    was?.fromNodeId === is?.fromNodeId &&
    was?.toNodeId === is?.toNodeId &&
    sameLine(before, after, id)
  );
}

/** Every run that meets at a node, and on through nodes that do not hold and runs whose clips let one see past. */
function spread(map: MapDocument, nodeId: NodeId, touched: Set<SegmentId>, runsLeft: number): void {
  const node = map.nodes.get(nodeId);
  for (const run of runsAtNode(map, nodeId)) {
    touched.add(run.id);
    if (runsLeft === 0 || (node && nodeHolds(node)) || holdsByItself(map, run)) continue;
    spread(map, run.fromNodeId === nodeId ? run.toNodeId : run.fromNodeId, touched, runsLeft - 1);
  }
}

/** Whether a run has two holds of its own: nobody looks for one past them. */
function holdsByItself(map: MapDocument, run: Segment): boolean {
  const lengthMm = runShape(map, run)?.line.lengthMm ?? 0;
  const held = run.clips
    .filter(({ missing }) => !missing)
    .map(({ stationMm }) => Math.min(lengthMm, stationMm));
  return held.length > 1 && Math.max(...held) - Math.min(...held) >= samePlaceMm;
}

/** Runs near a spot that changed, or near one whose nearest run did: its given gap belongs to that run. */
function addNearSpots(
  before: MapDocument,
  after: MapDocument,
  reachMm: number,
  reshaped: ReadonlySet<SegmentId>,
  touched: Set<SegmentId>,
): void {
  const changed = new Set<RubSpot>();
  for (const id of changedKeys(before.rubSpots, after.rubSpots)) {
    for (const map of [before, after]) {
      const spot = map.rubSpots.get(id);
      if (spot) changed.add(spot);
    }
  }
  const doubtful = new Set<RubSpot>();
  for (const map of [before, after]) {
    for (const id of reshaped) {
      const run = map.segments.get(id);
      for (const { spot } of run ? nearSpots(map, run, reachMm) : []) {
        if (spot.clearanceMm !== null && !changed.has(spot)) doubtful.add(spot);
      }
    }
  }
  carryNearestRuns(before, after, new Set([...changed, ...doubtful].map(({ id }) => id)));
  for (const spot of doubtful) {
    if (nearestRunMm(before, spot, reachMm) !== nearestRunMm(after, spot, reachMm)) changed.add(spot);
  }
  for (const spot of changed) {
    const bounds = boundsOf(spot.points);
    if (!bounds) continue;
    for (const run of runsInBounds(after, grownBounds(bounds, reachMm))) touched.add(run.id);
  }
}

function changedKeys<K, R>(before: ReadonlyMap<K, R>, after: ReadonlyMap<K, R>): readonly K[] {
  if (before === after) return [];
  const changed: K[] = [];
  if (before.size === after.size && inStep(before, after, changed)) return changed;
  changed.length = 0;
  for (const [key, record] of after) if (before.get(key) !== record) changed.push(key);
  for (const key of before.keys()) if (!after.has(key)) changed.push(key);
  return changed;
}

/** Compares two tables with the same keys in the same order, without looking any up; false for others. */
function inStep<K, R>(before: ReadonlyMap<K, R>, after: ReadonlyMap<K, R>, changed: K[]): boolean {
  const keys = before.keys();
  const records = before.values();
  for (const [key, record] of after) {
    if (keys.next().value !== key) return false;
    if (records.next().value !== record) changed.push(key);
  }
  return true;
}
