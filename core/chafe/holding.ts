import type { MapDocument } from '../map/map-document.ts';
import type { MapNode, Segment } from '../map/records.ts';
import type { NodeId } from '../quantity/id.ts';
import { runShape } from './run-shape.ts';
import { runsAtNode } from './runs-at-node.ts';

const floating: ReadonlySet<MapNode['kind']> = new Set(['branch', 'splice', 'loose-end']);

/** Runs followed past a branch in search of a hold: beyond this the loom hangs free for all we know. */
export const farthestRuns = 6;

/**
 * Whether a node holds the loom still. Plugs, parts, earth points and grommets do; a branch, a splice and
 * a loose end hang with the loom.
 * @example
 * nodeHolds(sample.map.nodes.get('node:east')) // => false
 */
export function nodeHolds(node: MapNode): boolean {
  return !floating.has(node.kind);
}

/**
 * How far past a run's end the loom is next held, in mm along the nearest of the runs that go on from
 * there: 0 when the node holds, infinite when nothing does. Clips marked missing hold nothing.
 * @example
 * holdBeyondMm(sample.map, sample.rear, 'node:east') // => 500
 */
export function holdBeyondMm(
  map: MapDocument,
  run: Segment,
  nodeId: NodeId,
  runsLeft = farthestRuns,
): number {
  const node = map.nodes.get(nodeId);
  if (node && nodeHolds(node)) return 0;
  if (runsLeft === 0) return Number.POSITIVE_INFINITY;
  let nearest = Number.POSITIVE_INFINITY;
  for (const next of runsAtNode(map, nodeId)) {
    if (next.id === run.id) continue;
    const shape = runShape(map, next);
    if (!shape) continue;
    const { lengthMm } = shape.line;
    const fromHere = next.fromNodeId === nodeId;
    let first = Number.POSITIVE_INFINITY;
    for (const clip of next.clips) {
      if (!clip.missing) first = Math.min(first, fromHere ? clip.stationMm : lengthMm - clip.stationMm);
    }
    if (first > lengthMm) {
      const farNode = fromHere ? next.toNodeId : next.fromNodeId;
      first = lengthMm + holdBeyondMm(map, next, farNode, runsLeft - 1);
    }
    nearest = Math.min(nearest, Math.max(0, first));
  }
  return nearest;
}
