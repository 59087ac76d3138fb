import type { NodeKind } from '../map/kinds.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { NodeId } from '../quantity/id.ts';
import type { CircuitLine } from './circuit-line.ts';

/** A stretch as a person with a tape would give it: from something they can put a hand on. */
export interface Landmark {
  readonly nodeId: NodeId;
  /** Where the stretch lies seen from it: towards the circuit's first end, its second, or across it. */
  readonly lies: 'towards-first-end' | 'towards-second-end' | 'across';
  /** Distances along the loom in mm. Across: towards the first end, then towards the second. */
  readonly nearMm: number;
  readonly farMm: number;
}

/** Places a hand can find without a diagram: plugs, parts, pass-throughs and earth points. */
const landmarkKinds: ReadonlySet<NodeKind> = new Set([
  'inline-connector',
  'ground-point',
  'grommet',
  'module',
  'switch',
  'sensor',
  'load',
  'fuse-box',
]);

/**
 * The landmark nearest to a stretch of a circuit, both in mm of wire from its first end. On a branch only what the branch
 * itself passes counts. An end of the wire serves when nothing on it is a landmark. Of two equally near ones the earlier wins. O(nodes).
 * @example
 * nearestLandmark(sample.map, sample.line, 600, 900).nearMm // => 100
 */
export function nearestLandmark(map: MapDocument, line: CircuitLine, fromMm: number, toMm: number): Landmark {
  const branch = line.branches.find((each) => each.fromMm <= fromMm && toMm <= each.toMm);
  const nodes = branch?.nodes ?? line.nodes;
  const known = nodes.filter(({ nodeId }) => {
    const node = map.nodes.get(nodeId);
    return node !== undefined && landmarkKinds.has(node.kind);
  });
  const among = known.length > 0 ? known : [nodes[0], nodes.at(-1)].filter((node) => node !== undefined);
  let best: Landmark | null = null;
  let bestGapMm = Number.POSITIVE_INFINITY;
  for (const { nodeId, stationMm } of among) {
    const gapMm = Math.max(0, fromMm - stationMm, stationMm - toMm);
    if (gapMm >= bestGapMm) continue;
    bestGapMm = gapMm;
    if (stationMm <= fromMm) {
      best = { nodeId, lies: 'towards-second-end', nearMm: fromMm - stationMm, farMm: toMm - stationMm };
    } else if (stationMm >= toMm) {
      best = { nodeId, lies: 'towards-first-end', nearMm: stationMm - toMm, farMm: stationMm - fromMm };
    } else best = { nodeId, lies: 'across', nearMm: stationMm - fromMm, farMm: toMm - stationMm };
  }
  return best as Landmark;
}
