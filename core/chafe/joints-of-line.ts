import type { CircuitLine, PassedNode } from '../circuit/circuit-line.ts';
import type { NodeId } from '../quantity/id.ts';

/** Where wire meets a node: it comes to the station from before it, or goes on after it. */
export interface MeetingWire {
  readonly stationMm: number;
  readonly side: 'before' | 'after';
}

/**
 * The nodes a circuit and its branches pass on the way, and the splices they hang together by, with every piece of
 * wire that meets there. What sits where the wires end is a part, weighed as such, and not among them.
 * @example
 * [...stationsOfJoints(sample.line).keys()] // => ['node:middle', 'node:east']
 */
export function stationsOfJoints(line: CircuitLine): ReadonlyMap<NodeId, readonly MeetingWire[]> {
  const spliced = new Set(line.branches.map(({ joinNodeId }) => joinNodeId));
  const meetings = new Map<NodeId, MeetingWire[]>();
  const chains: readonly (readonly PassedNode[])[] = [line.nodes, ...line.branches.map(({ nodes }) => nodes)];
  for (const nodes of chains) {
    nodes.forEach(({ nodeId, stationMm }, i) => {
      const onTheWay = i > 0 && i < nodes.length - 1;
      if (!onTheWay && !spliced.has(nodeId)) return;
      const held = meetings.get(nodeId) ?? [];
      if (i > 0) held.push({ stationMm, side: 'before' });
      if (i < nodes.length - 1) held.push({ stationMm, side: 'after' });
      meetings.set(nodeId, held);
    });
  }
  return meetings;
}
