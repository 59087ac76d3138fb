import type { MapDocument } from '../map/map-document.ts';
import type { MapNode, Segment } from '../map/records.ts';
import type { NodeId } from '../quantity/id.ts';
import { samePlaceMm } from '../quantity/tolerance.ts';
import { runShape } from './run-shape.ts';
import { runsAtNode } from './runs-at-node.ts';

const floating: ReadonlySet<MapNode['kind']> = new Set(['branch', 'splice', 'loose-end']);

/** Runs followed past a branch in search of a hold: beyond this the loom hangs free for all we know. */
export const farthestRuns = 6;

/** Something that keeps a loom still at a distance; what is not solid may be a clip that came off. */
export interface Hold {
  readonly atMm: number;
  readonly solid: boolean;
}

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
 * Where the loom is next held past a run's end, and where after that: the first two holds along whichever
 * of the runs that go on from there is held soonest, in mm from the end. A node that holds is the only
 * one, at 0; empty when nothing holds. Clips marked missing hold nothing.
 * @example
 * holdsBeyond(sample.map, sample.rear, 'node:east') // => [{ atMm: 500, solid: true }]
 */
export function holdsBeyond(
  map: MapDocument,
  run: Segment,
  nodeId: NodeId,
  runsLeft = farthestRuns,
): readonly Hold[] {
  const node = map.nodes.get(nodeId);
  if (node && nodeHolds(node)) return [{ atMm: 0, solid: true }];
  let soonest: readonly Hold[] = [];
  if (runsLeft === 0) return soonest;
  for (const next of runsAtNode(map, nodeId)) {
    if (next.id === run.id) continue;
    const holds = holdsAlong(map, next, nodeId, runsLeft);
    const first = holds[0];
    if (first && (!soonest[0] || comesSooner(holds, soonest))) soonest = holds;
  }
  return soonest;
}

/** Nearer first hold, then nearer second: no tie is left to the order runs are listed in. */
function comesSooner(a: readonly Hold[], b: readonly Hold[]): boolean {
  const reach = (holds: readonly Hold[], i: number) => holds[i]?.atMm ?? Number.POSITIVE_INFINITY;
  return reach(a, 0) < reach(b, 0) || (reach(a, 0) === reach(b, 0) && reach(a, 1) < reach(b, 1));
}

/** First holds along each run, by the end one comes from and the runs left to follow, for one map. */
const known = new WeakMap<MapDocument, Map<Segment, (readonly Hold[] | undefined)[]>>();

function holdsAlong(map: MapDocument, run: Segment, fromNodeId: NodeId, runsLeft: number): readonly Hold[] {
  let ofMap = known.get(map);
  if (!ofMap) {
    ofMap = new Map();
    known.set(map, ofMap);
  }
  let ofRun = ofMap.get(run);
  if (!ofRun) {
    ofRun = [];
    ofMap.set(run, ofRun);
  }
  const place = 2 * runsLeft + (run.fromNodeId === fromNodeId ? 1 : 0);
  const before = ofRun[place];
  if (before) return before;
  const holds = holdsFollowed(map, run, fromNodeId, runsLeft);
  ofRun[place] = holds;
  return holds;
}

function holdsFollowed(
  map: MapDocument,
  run: Segment,
  fromNodeId: NodeId,
  runsLeft: number,
): readonly Hold[] {
  const shape = runShape(map, run);
  if (!shape) return [];
  const { lengthMm } = shape.line;
  const onward = run.fromNodeId === fromNodeId;
  const clips = run.clips
    .filter((clip) => !clip.missing)
    .map((clip) => Math.min(lengthMm, clip.stationMm))
    .map((stationMm) => ({ atMm: onward ? stationMm : lengthMm - stationMm, solid: false }));
  const onRun = apartHolds(clips);
  if (onRun.length > 1) return onRun.slice(0, 2);
  const farNode = onward ? run.toNodeId : run.fromNodeId;
  const past = holdsBeyond(map, run, farNode, runsLeft - 1);
  return apartHolds([...onRun, ...past.map(({ atMm, solid }) => ({ atMm: lengthMm + atMm, solid }))]).slice(
    0,
    2,
  );
}

/**
 * Holds in order, those at one place being one hold, solid if any is.
 * @example
 * apartHolds([{ atMm: 5, solid: false }, { atMm: 0, solid: false }, { atMm: 0, solid: true }]) // => [{ atMm: 0, solid: true }, { atMm: 5, solid: false }]
 */
export function apartHolds(holds: readonly Hold[]): readonly Hold[] {
  const kept: Hold[] = [];
  for (const hold of inOrder(holds) ? holds : [...holds].sort((a, b) => a.atMm - b.atMm)) {
    const last = kept[kept.length - 1];
    if (!last || hold.atMm - last.atMm >= samePlaceMm) kept.push(hold);
    else if (hold.solid) kept[kept.length - 1] = { atMm: last.atMm, solid: true };
  }
  return kept;
}

function inOrder(holds: readonly Hold[]): boolean {
  for (let i = 1; i < holds.length; i++) {
    if ((holds[i] as Hold).atMm < (holds[i - 1] as Hold).atMm) return false;
  }
  return true;
}
