import { assert } from '../quantity/assert.ts';
import { compareText } from '../quantity/compare-text.ts';
import type { NodeId, SegmentId } from '../quantity/id.ts';
import { fail, ok, type Result } from '../quantity/result.ts';
import type { MapDocument } from './map-document.ts';
import type { PathStep, Segment } from './records.ts';
import { segmentLine } from './segment-line.ts';
import { farNodeId, runsAtNodes } from './topology.ts';
import { drawnWireMm, type Loom, shortestLeg } from './trace-path.ts';

/** One way a wire could take. */
export interface TracedWay {
  readonly path: readonly PathStep[];
  /** Length of wire, as measured where someone did. */
  readonly lengthMm: number;
}

/** Between which nodes, and past which that would otherwise end a wire: a fuse box passed in a busbar, say. */
export interface WayWishes {
  readonly fromNodeId: NodeId;
  readonly toNodeId: NodeId;
  readonly through?: Iterable<NodeId>;
}

/**
 * Length of wire along a path, in mm; runs that are half drawn or gone count nothing.
 * @example
 * wayLengthMm(sample.map, sample.circuit.path) // => 1500
 */
export function wayLengthMm(map: MapDocument, path: readonly PathStep[]): number {
  let sum = 0;
  for (const { segmentId } of path) {
    const segment = map.segments.get(segmentId);
    if (segment) sum += drawnWireMm(map, segment) ?? 0;
  }
  return sum;
}

/** Where a step begins. */
function startOf(map: MapDocument, step: PathStep): NodeId {
  const segment = map.segments.get(step.segmentId);
  assert(segment, 'a traced step lies on a run that is there');
  return step.reversed ? segment.toNodeId : segment.fromNodeId;
}

/**
 * The shortest ways for a wire between two nodes, shortest first, at most `most` of them, none passing a
 * node twice. The first is what `tracePath` gives where nothing is wished to be passed; a loom without rings has only that. Ties go by the ids of
 * the runs. Refuses `missing-reference`, `same-node` and `no-path`. Yen's method (Finding the K shortest loopless paths in a
 * network, 1971) over `shortestLeg`; runs no ring passes through are known beforehand and cost nothing.
 * @example
 * traceWays(sample.map, { fromNodeId: 'node:west', toNodeId: 'node:far' }, 3).value.map((way) => way.lengthMm) // => [1500]
 */
export function traceWays(
  map: MapDocument,
  { fromNodeId, toNodeId, through = [] }: WayWishes,
  most: number,
): Result<readonly TracedWay[]> {
  for (const node of [fromNodeId, toNodeId]) {
    if (!map.nodes.has(node))
      return fail({ code: 'missing-reference', thing: map.id, field: 'nodes', missing: node });
  }
  if (fromNodeId === toNodeId) return fail({ code: 'same-node', node: fromNodeId });
  const loom = { ...measuredLoom(map), through: new Set(through) };
  const shortest = shortestLeg(loom, new Set(), fromNodeId, toNodeId);
  if (!shortest) return fail({ code: 'no-path', fromNode: fromNodeId, toNode: toNodeId });
  const onlyWays = bridges(loom, fromNodeId);
  const found: TracedWay[] = [wayOf(map, shortest)];
  const waiting = new Map<string, TracedWay>();
  while (found.length < most) {
    const last = found[found.length - 1] as TracedWay;
    addDetours(loom, onlyWays, found, last, toNodeId, waiting);
    const next = [...waiting].sort(
      ([a, one], [b, other]) => one.lengthMm - other.lengthMm || compareText(a, b),
    )[0];
    if (!next) break;
    waiting.delete(next[0]);
    found.push(next[1]);
  }
  return ok(found);
}

/** The map with every run measured once. */
function measuredLoom(map: MapDocument): Loom {
  const known = new Map<SegmentId, number | null>();
  const lengthMm = (segment: Segment): number | null => {
    const held = known.get(segment.id);
    if (held !== undefined) return held;
    const mm = drawnWireMm(map, segment);
    known.set(segment.id, mm);
    return mm;
  };
  return { map, runs: runsAtNodes(map), lengthMm };
}

const keyOf = (path: readonly PathStep[]): string => path.map((step) => step.segmentId).join(' ');

const wayOf = (map: MapDocument, path: readonly PathStep[]): TracedWay => ({
  path,
  lengthMm: wayLengthMm(map, path),
});

/** Ways that follow `last` up to some node and leave it there, each by its shortest end. */
function addDetours(
  loom: Loom,
  onlyWays: ReadonlySet<SegmentId>,
  found: readonly TracedWay[],
  last: TracedWay,
  toNodeId: NodeId,
  waiting: Map<string, TracedWay>,
): void {
  const { map, runs } = loom;
  const passed = new Set<SegmentId>();
  const known = new Set(found.map(({ path }) => keyOf(path)));
  last.path.forEach((step, i) => {
    const root = last.path.slice(0, i);
    const leaveAt = startOf(map, step);
    if (!onlyWays.has(step.segmentId)) {
      const rootKey = keyOf(root);
      const taken = found.flatMap(({ path }) => {
        const next = path[i];
        return next && keyOf(path.slice(0, i)) === rootKey ? [next.segmentId] : [];
      });
      const end = shortestLeg(loom, new Set([...passed, ...taken]), leaveAt, toNodeId);
      const path = end ? [...root, ...end] : [];
      const key = keyOf(path);
      if (path.length > 0 && !known.has(key)) waiting.set(key, wayOf(map, path));
    }
    // What is left of the way must not come back to a node already passed.
    for (const run of runs.get(leaveAt) ?? []) passed.add(run.id);
  });
}

/**
 * Runs that no ring passes through, among those hanging together with a node: whoever must pass one has no
 * other way. Depth-first search for low points (Tarjan, A note on finding the bridges of a graph, 1974),
 * without recursion, for a loom may be thousands of runs long.
 */
function bridges({ map, runs }: Loom, start: NodeId): ReadonlySet<SegmentId> {
  const seenAt = new Map<NodeId, number>([[start, 0]]);
  const low = new Map<NodeId, number>([[start, 0]]);
  const found = new Set<SegmentId>();
  const trail: { readonly nodeId: NodeId; readonly by: SegmentId | null; next: number }[] = [
    { nodeId: start, by: null, next: 0 },
  ];
  for (let at = trail.at(-1); at; at = trail.at(-1)) {
    const run = (runs.get(at.nodeId) ?? [])[at.next++];
    if (!run) {
      trail.pop();
      const before = trail.at(-1);
      if (!before || at.by === null) continue;
      const lowest = low.get(at.nodeId) as number;
      low.set(before.nodeId, Math.min(low.get(before.nodeId) as number, lowest));
      if (lowest > (seenAt.get(before.nodeId) as number)) found.add(at.by);
      continue;
    }
    if (run.id === at.by || !segmentLine(map, run)) continue;
    const far = farNodeId(run, at.nodeId);
    const seen = seenAt.get(far);
    if (seen !== undefined) {
      low.set(at.nodeId, Math.min(low.get(at.nodeId) as number, seen));
      continue;
    }
    seenAt.set(far, seenAt.size);
    low.set(far, seenAt.size - 1);
    trail.push({ nodeId: far, by: run.id, next: 0 });
  }
  return found;
}
