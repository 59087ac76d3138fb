import { assert } from '../quantity/assert.ts';
import { compareText } from '../quantity/compare-text.ts';
import type { NodeId, SegmentId } from '../quantity/id.ts';
import { fail, ok, type Result } from '../quantity/result.ts';
import type { NodeKind } from './kinds.ts';
import type { MapDocument } from './map-document.ts';
import type { PathStep, Segment } from './records.ts';
import { segmentLine, wireLengthMm } from './segment-line.ts';
import { farNodeId, type RunsAtNodes, runsAtNodes } from './topology.ts';

/** Where one wire ends: it does not pass through these, so a trace only does so when told to. */
const endKinds: ReadonlySet<NodeKind> = new Set([
  'module',
  'switch',
  'sensor',
  'load',
  'fuse-box',
  'ground-point',
  'loose-end',
]);

/**
 * Whether one wire ends at such a node, so that a trace does not pass it by itself.
 * @example
 * endsWires('fuse-box') // => true
 */
export function endsWires(kind: NodeKind): boolean {
  return endKinds.has(kind);
}

/** What a trace may and must use. */
export interface TraceWishes {
  readonly fromNodeId: NodeId;
  readonly toNodeId: NodeId;
  /** Nodes to pass in this order. */
  readonly viaNodeIds?: readonly NodeId[];
  readonly avoidSegmentIds?: readonly SegmentId[];
}

/**
 * The shortest way for a wire between two nodes, by length of wire, through the wished nodes in turn.
 * It does not run through a component, earth point or loose end on the way, unless that is wished for. Ties
 * go to the run with the smaller id. Refuses `missing-reference`, `same-node` and `no-path` (naming the
 * leg that fails). Dijkstra's method with a heap: O(runs log runs) for each leg.
 * @example
 * tracePath(sample.map, { fromNodeId: 'node:east', toNodeId: 'node:west' }).value.map((step) => step.segmentId) // => ['segment:middle', 'segment:front']
 */
export function tracePath(map: MapDocument, wishes: TraceWishes): Result<readonly PathStep[]> {
  const stops = [wishes.fromNodeId, ...(wishes.viaNodeIds ?? []), wishes.toNodeId];
  for (const stop of stops) {
    if (!map.nodes.has(stop))
      return fail({ code: 'missing-reference', thing: map.id, field: 'nodes', missing: stop });
  }
  const loom: Loom = { map, runs: runsAtNodes(map), lengthMm: (segment) => drawnWireMm(map, segment) };
  const avoid = new Set(wishes.avoidSegmentIds);
  const path: PathStep[] = [];
  for (let i = 1; i < stops.length; i++) {
    const from = stops[i - 1] as NodeId;
    const to = stops[i] as NodeId;
    if (from === to) return fail({ code: 'same-node', node: from });
    const leg = shortestLeg(loom, avoid, from, to);
    if (!leg) return fail({ code: 'no-path', fromNode: from, toNode: to });
    path.push(...leg);
  }
  return ok(path);
}

/** A map as a trace sees it; whoever traces often can keep it, with the lengths once measured. */
export interface Loom {
  readonly map: MapDocument;
  readonly runs: RunsAtNodes;
  /** Length of wire in a run; null for one half drawn. */
  readonly lengthMm: (segment: Segment) => number | null;
  /** Nodes that end wires but may be passed this time. */
  readonly through?: ReadonlySet<NodeId>;
}

/**
 * Length of wire in a run of a map, in mm; null for one half drawn.
 * @example
 * drawnWireMm(sample.map, sample.rear) // => 500
 */
export function drawnWireMm(map: MapDocument, segment: Segment): number | null {
  const line = segmentLine(map, segment);
  return line && wireLengthMm(segment, line.lengthMm);
}

/**
 * As `tracePath` for one leg and nodes that are there; null when no runs lead there.
 * @example
 * shortestLeg({ map: sample.map, runs: runsAtNodes(sample.map), lengthMm: () => 1 }, new Set(), 'node:west', 'node:middle').length // => 1
 */
export function shortestLeg(
  { map, runs, lengthMm: lengthOf, through }: Loom,
  avoid: ReadonlySet<SegmentId>,
  from: NodeId,
  to: NodeId,
): readonly PathStep[] | null {
  const reachedMm = new Map<NodeId, number>([[from, 0]]);
  const cameBy = new Map<NodeId, Segment>();
  const settled = new Set<NodeId>();
  const queue = new NearestQueue();
  queue.push(from, 0);
  for (let nodeId = queue.pop(); nodeId !== null; nodeId = queue.pop()) {
    if (settled.has(nodeId)) continue;
    if (nodeId === to) return stepsBack(cameBy, from, to);
    settled.add(nodeId);
    const kind = map.nodes.get(nodeId)?.kind;
    const ends = kind === undefined || (endKinds.has(kind) && !through?.has(nodeId));
    if (nodeId !== from && ends) continue;
    for (const segment of runs.get(nodeId) ?? []) {
      const far = farNodeId(segment, nodeId);
      if (settled.has(far) || avoid.has(segment.id)) continue;
      const runMm = lengthOf(segment);
      if (runMm === null) continue;
      const lengthMm = (reachedMm.get(nodeId) as number) + runMm;
      const knownMm = reachedMm.get(far) ?? Number.POSITIVE_INFINITY;
      const known = cameBy.get(far);
      const tieWon = lengthMm === knownMm && known !== undefined && compareText(segment.id, known.id) < 0;
      if (lengthMm < knownMm || tieWon) {
        reachedMm.set(far, lengthMm);
        cameBy.set(far, segment);
        queue.push(far, lengthMm);
      }
    }
  }
  return null;
}

function stepsBack(cameBy: ReadonlyMap<NodeId, Segment>, from: NodeId, to: NodeId): readonly PathStep[] {
  const steps: PathStep[] = [];
  for (let at = to; at !== from; ) {
    const segment = cameBy.get(at);
    assert(segment, 'a reached node was reached by a run');
    steps.push({ segmentId: segment.id, reversed: segment.fromNodeId === at });
    at = farNodeId(segment, at);
  }
  return steps.reverse();
}

/** A binary heap of nodes, nearest first, ties by id. */
class NearestQueue {
  private readonly heap: { readonly nodeId: NodeId; readonly mm: number }[] = [];

  push(nodeId: NodeId, mm: number): void {
    this.heap.push({ nodeId, mm });
    let child = this.heap.length - 1;
    while (child > 0) {
      const parent = (child - 1) >> 1;
      if (!this.before(child, parent)) break;
      this.swap(child, parent);
      child = parent;
    }
  }

  pop(): NodeId | null {
    const top = this.heap[0];
    const last = this.heap.pop();
    if (!top || !last) return null;
    if (this.heap.length > 0) {
      this.heap[0] = last;
      this.sink();
    }
    return top.nodeId;
  }

  private sink(): void {
    for (let parent = 0; ; ) {
      let least = parent;
      for (const child of [2 * parent + 1, 2 * parent + 2]) {
        if (child < this.heap.length && this.before(child, least)) least = child;
      }
      if (least === parent) return;
      this.swap(parent, least);
      parent = least;
    }
  }

  private before(i: number, j: number): boolean {
    const a = this.heap[i];
    const b = this.heap[j];
    if (!a || !b) return false;
    return a.mm < b.mm || (a.mm === b.mm && compareText(a.nodeId, b.nodeId) < 0);
  }

  private swap(i: number, j: number): void {
    const a = this.heap[i];
    const b = this.heap[j];
    if (!a || !b) return;
    this.heap[i] = b;
    this.heap[j] = a;
  }
}
