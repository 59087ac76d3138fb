import { type CircuitLine, layStraight } from '#core/circuit/circuit-line.ts';
import { withBranches } from '#core/circuit/joined-wires.ts';
import type { CircuitEndKind, NodeKind } from '#core/map/kinds.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Circuit, MapNode, Segment } from '#core/map/records.ts';
import type { CircuitId, NodeId } from '#core/quantity/id.ts';
import { straightWire } from './four-metre-wire.ts';

/** A branch hung on a splice: its own circuit on the map, with plugs on the way. */
export interface BranchShape {
  readonly id: CircuitId;
  readonly from: NodeId;
  readonly lengthMm: number;
  /** Share of the way of each plug, and of a splice for a further branch. */
  readonly plugs: readonly number[];
  readonly splice?: { readonly id: NodeId; readonly share: number } | undefined;
  readonly mm2: number;
  readonly end: CircuitEndKind;
  /** Traced from its far end to the splice. */
  readonly reversed?: boolean;
}

/** A straight circuit with splices `node:b1` … on it and the branches given, each a circuit of its own. */
export function branchedWire(shape: {
  readonly lengthMm: number;
  readonly splicesMm: readonly number[];
  readonly plugsMm: readonly number[];
  readonly mm2: number;
  readonly ends?: readonly [CircuitEndKind, CircuitEndKind];
  readonly branches: readonly BranchShape[];
}): { readonly map: MapDocument; readonly line: CircuitLine } {
  const main = straightWire({ ...shape, branchesMm: shape.splicesMm });
  const nodes = new Map(main.map.nodes);
  for (const [id, node] of nodes) if (id.startsWith('node:b')) nodes.set(id, { ...node, kind: 'splice' });
  const segments = new Map(main.map.segments);
  const circuits = new Map(main.map.circuits);
  const template = segments.values().next().value as Segment;
  shape.branches.forEach((branch, b) => {
    const at = (nodes.get(branch.from) as MapNode).at;
    const word = branch.id.slice('circuit:'.length);
    const stops: { id: NodeId; kind: NodeKind; share: number }[] = [
      ...branch.plugs.map((share, i) => ({
        id: `node:${word}-c${i + 1}` as const,
        kind: 'inline-connector' as const,
        share,
      })),
      ...(branch.splice ? [{ ...branch.splice, kind: 'splice' as const }] : []),
      { id: `node:${word}-end` as const, kind: 'load' as const, share: 1 },
    ].sort((x, y) => x.share - y.share);
    let last = branch.from;
    const path: Circuit['path'] = stops.map(({ id, kind, share }, i) => {
      const away = (b % 2 === 0 ? 1 : -1) * branch.lengthMm * share;
      const point = { xMm: at.xMm, yMm: at.yMm + away, zMm: 0 };
      nodes.set(id, { id, name: id, kind, at: point, panelIds: [], note: '' });
      const segment: Segment = {
        ...template,
        id: `segment:${word}-${i + 1}`,
        name: `${word} ${i + 1}`,
        fromNodeId: last,
        toNodeId: id,
      };
      segments.set(segment.id, segment);
      last = id;
      return { segmentId: segment.id, reversed: false };
    });
    const ends: Circuit['ends'] = [
      { nodeId: branch.from, kind: 'other' },
      { nodeId: last, kind: branch.end },
    ];
    const circuit = main.line.circuit;
    circuits.set(branch.id, {
      ...circuit,
      id: branch.id,
      name: word,
      conductorMm2: branch.mm2,
      path: branch.reversed ? path.map((step) => ({ ...step, reversed: true })).reverse() : path,
      ends: branch.reversed ? [ends[1], ends[0]] : ends,
    });
  });
  const map: MapDocument = { ...main.map, nodes, segments, circuits };
  const laid = layStraight(map, main.line.circuit);
  if (!laid.ok) throw new Error(laid.problem.code);
  return { map, line: withBranches(map, laid.value) };
}
