import type { BodyPoint } from '../../geometry/place.ts';
import { bodyDistanceMm } from '../../geometry/point.ts';
import type { Chance } from '../../quantity/chance.ts';
import type { NodeId, SegmentId } from '../../quantity/id.ts';
import { fail, ok, type Result } from '../../quantity/result.ts';
import { samePlaceMm } from '../../quantity/tolerance.ts';
import type { MapDocument } from '../map-document.ts';
import { draftOf, type MapDraft } from '../map-draft.ts';
import type { Patch } from '../patch.ts';
import type { MapNode, Segment } from '../records.ts';
import { segmentLine } from '../segment-line.ts';
import { splitRun } from '../split-run.ts';
import { stationOnRun } from '../station-on-run.ts';
import { runsAtNodes } from '../topology.ts';

/** One drawn point, and what it snapped to, if anything. */
export interface RoutePoint {
  readonly at: BodyPoint;
  readonly snap?:
    | { readonly nodeId: NodeId }
    /** Makes a branch in that run, at that drawn station. */
    | { readonly segmentId: SegmentId; readonly stationMm: number };
}

/** What every run of the drawn route starts out with. */
export type RunDefaults = Pick<
  Segment,
  'covering' | 'smooth' | 'bundleDiameterMm' | 'traits' | 'measuredLengthMm'
>;

const plainRun: RunDefaults = {
  covering: 'pvc-tape',
  smooth: false,
  bundleDiameterMm: null,
  traits: [],
  measuredLengthMm: null,
};

/** A drawn point with the node it became; null where it is a bend. */
interface Corner {
  readonly at: BodyPoint;
  readonly nodeId: NodeId | null;
}

/**
 * Draws a route through points: ends that snapped to nothing become loose ends, points that snapped to a
 * node pass through it, points that snapped to a run split it with a branch; between two nodes there is
 * one run with the points between as bends, and all of its runs share the route name. A loose end that a
 * second run reaches becomes a branch. Points drawn on top of each other count once. Refuses
 * `too-few-points`, `not-found`, `beyond-end`, `zero-length`, a run back to its own node (`same-node`)
 * and a route of no length (`same-point`).
 * @example
 * drawRoute(sample.map, { routeName: 'Roof', points: [{ at: { xMm: 1500, yMm: 0, zMm: 0 }, snap: { nodeId: 'node:far' } }, { at: { xMm: 1900, yMm: 0, zMm: 0 } }] }, seededChance(1)).value.added.length // => 2
 */
export function drawRoute(
  map: MapDocument,
  input: {
    readonly routeName: string;
    readonly points: readonly RoutePoint[];
    readonly run?: Partial<RunDefaults>;
  },
  chance: Chance,
): Result<Patch> {
  const { points } = input;
  if (points.length < 2) return fail({ code: 'too-few-points', needed: 2, found: points.length });
  const draft = draftOf(map);
  const snapped = snapPoints(draft, points, chance);
  if (!snapped.ok) return snapped;
  const corners = withoutDoubles(snapped.value);
  if (corners.length < 2) return fail({ code: 'same-point' });
  const closed = withEndNodes(draft, corners, chance);

  let start = closed[0] as Corner;
  let bends: BodyPoint[] = [];
  for (const corner of closed.slice(1)) {
    if (corner.nodeId === null) {
      bends.push(corner.at);
      continue;
    }
    const fromNodeId = start.nodeId as NodeId;
    if (fromNodeId === corner.nodeId) return fail({ code: 'same-node', node: fromNodeId });
    draft.put({
      ...plainRun,
      ...input.run,
      id: draft.freshId('segment', chance),
      name: '',
      routeName: input.routeName,
      fromNodeId,
      toNodeId: corner.nodeId,
      bends,
      clips: [],
      tags: [],
      unchecked: false,
      note: '',
    });
    start = corner;
    bends = [];
  }
  makeBranches(draft, closed);
  return draft.finish();
}

function snapPoints(
  draft: MapDraft,
  points: readonly RoutePoint[],
  chance: Chance,
): Result<readonly Corner[]> {
  const corners: Corner[] = points.map(({ at }) => ({ at, nodeId: null }));
  const onRuns = new Map<SegmentId, { index: number; stationMm: number }[]>();
  for (const [index, { snap }] of points.entries()) {
    if (!snap) continue;
    if ('nodeId' in snap) {
      const node = draft.map.nodes.get(snap.nodeId);
      if (!node) return fail({ code: 'not-found', thing: snap.nodeId });
      corners[index] = { at: node.at, nodeId: node.id };
      continue;
    }
    const segment = draft.map.segments.get(snap.segmentId);
    if (!segment) return fail({ code: 'not-found', thing: snap.segmentId });
    const station = stationOnRun(draft.map, segment, snap.stationMm, 'snap.stationMm');
    if (!station.ok) return station;
    const known = onRuns.get(segment.id) ?? [];
    known.push({ index, stationMm: station.value });
    onRuns.set(segment.id, known);
  }
  // From the far end towards the start: the run's own id stays with the part not yet cut.
  for (const [segmentId, snaps] of onRuns) {
    let last: { node: MapNode; stationMm: number } | null = null;
    for (const { index, stationMm } of snaps.sort((a, b) => b.stationMm - a.stationMm)) {
      if (!last || last.stationMm - stationMm >= samePlaceMm) {
        const node: MapNode | null = branchAt(draft, segmentId, stationMm, chance);
        if (!node) return fail({ code: 'zero-length', thing: segmentId });
        last = { node, stationMm };
      }
      corners[index] = { at: last.node.at, nodeId: last.node.id };
    }
  }
  return ok(corners);
}

/** The node at a station of a run: an end of it when that near, else a new branch. */
function branchAt(draft: MapDraft, segmentId: SegmentId, stationMm: number, chance: Chance): MapNode | null {
  const segment = draft.map.segments.get(segmentId);
  const line = segment && segmentLine(draft.map, segment);
  if (!segment || !line) return null;
  if (stationMm < samePlaceMm) return draft.map.nodes.get(segment.fromNodeId) ?? null;
  if (stationMm > line.lengthMm - samePlaceMm) return draft.map.nodes.get(segment.toNodeId) ?? null;
  return splitRun(draft, segment, line, stationMm, {
    nodeId: draft.freshId('node', chance),
    segmentId: draft.freshId('segment', chance),
  });
}

/** Points on top of the one before count once; of a bend and a node on top of each other the node stays. */
function withoutDoubles(corners: readonly Corner[]): readonly Corner[] {
  const kept: Corner[] = [];
  for (const corner of corners) {
    const last = kept[kept.length - 1];
    const double =
      last !== undefined &&
      bodyDistanceMm(last.at, corner.at) < samePlaceMm &&
      (last.nodeId === null || corner.nodeId === null || last.nodeId === corner.nodeId);
    if (!double) kept.push(corner);
    else if (corner.nodeId !== null) kept[kept.length - 1] = corner;
  }
  return kept;
}

function withEndNodes(draft: MapDraft, corners: readonly Corner[], chance: Chance): readonly Corner[] {
  return corners.map((corner, i) => {
    const isEnd = i === 0 || i === corners.length - 1;
    if (!isEnd || corner.nodeId !== null) return corner;
    const nodeId = draft.freshId('node', chance);
    draft.put({ id: nodeId, name: '', kind: 'loose-end', at: corner.at, panelIds: [], note: '' });
    return { at: corner.at, nodeId };
  });
}

function makeBranches(draft: MapDraft, corners: readonly Corner[]): void {
  const runs = runsAtNodes(draft.map);
  for (const { nodeId } of corners) {
    const node = nodeId && draft.map.nodes.get(nodeId);
    if (node && node.kind === 'loose-end' && (runs.get(node.id)?.length ?? 0) > 1) {
      draft.put({ ...node, kind: 'branch' });
    }
  }
}
