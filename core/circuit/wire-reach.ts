import type { CircuitEnd } from '../map/records.ts';
import type { CircuitId, NodeId } from '../quantity/id.ts';
import type { PlugSide } from './car-state.ts';
import { type CircuitLine, lineEnds } from './circuit-line.ts';

/** A piece of wire on the line's ruler: of the circuit itself (row 0) or of a branch. */
export interface ReachedPiece {
  readonly row: number;
  readonly fromMm: number;
  readonly toMm: number;
}

/** A place on the wire. */
export interface WirePlace {
  readonly row: number;
  readonly atMm: number;
}

/** Where a walk along the wire begins, and what stops it. */
export interface WalkFrom extends WirePlace {
  /** On a parted plug: the half it begins on. */
  readonly side?: PlugSide | null | undefined;
  readonly apartNodeIds: readonly NodeId[];
  /** The wire is broken through here. */
  readonly brokenMm?: number | undefined;
}

/** A row of wire on the ruler: the circuit itself, or one branch. */
interface Chain {
  readonly fromMm: number;
  readonly toMm: number;
  readonly nodes: CircuitLine['nodes'];
  readonly parent: number | null;
  readonly joinMm: number;
}

/**
 * All wire that hangs together with a station, through splices, up to parted plugs, the break and the
 * ends. Pieces do not overlap; one for each row of wire met. O(rows x nodes).
 * @example
 * reachedWire(sample.line, { row: 0, atMm: 0, apartNodeIds: ['node:middle'] }) // => [{ row: 0, fromMm: 0, toMm: 500 }]
 */
export function reachedWire(line: CircuitLine, from: WalkFrom): ReachedPiece[] {
  const chains = chainsOf(line);
  const apart = new Set(from.apartNodeIds);
  const found = new Map<number, ReachedPiece>();
  const walk = (at: number, mm: number, side: PlugSide | null): void => {
    const chain = chains[at];
    if (!chain || found.has(at)) return;
    const stops = chain.nodes.flatMap(({ nodeId, stationMm }) =>
      apart.has(nodeId) && stationMm > chain.fromMm && stationMm < chain.toMm ? [stationMm] : [],
    );
    const broken = from.brokenMm;
    if (broken !== undefined && broken > chain.fromMm && broken < chain.toMm) stops.push(broken);
    const fromMm = side === 'second-end' ? mm : Math.max(chain.fromMm, ...stops.filter((stop) => stop < mm));
    const toMm = side === 'first-end' ? mm : Math.min(chain.toMm, ...stops.filter((stop) => stop > mm));
    found.set(at, { row: at, fromMm, toMm });
    if (chain.parent !== null && fromMm === chain.fromMm) walk(chain.parent, chain.joinMm, null);
    chains.forEach((child, i) => {
      if (child.parent === at && child.joinMm >= fromMm && child.joinMm <= toMm) walk(i, child.fromMm, null);
    });
  };
  walk(from.row, from.atMm, from.side ?? null);
  return [...found.values()];
}

/**
 * Where on the wire a node is met: on the branch whose circuit is named, else on the circuit itself, else on
 * the first branch that passes it. Null when none does.
 * @example
 * placeOfNode(sample.line, { nodeId: 'node:middle' }) // => { row: 0, atMm: 500 }
 */
export function placeOfNode(
  { nodes, branches }: CircuitLine,
  { nodeId, circuitId }: { readonly nodeId: NodeId; readonly circuitId?: CircuitId | undefined },
): WirePlace | null {
  const rows = [nodes, ...branches.map((branch) => branch.nodes)];
  const order = [
    ...branches.flatMap(({ circuit }, i) => (circuit.id === circuitId ? [i + 1] : [])),
    ...rows.keys(),
  ];
  for (const row of order) {
    const node = rows[row]?.find((each) => each.nodeId === nodeId);
    if (node) return { row, atMm: node.stationMm };
  }
  return null;
}

/** What sits at an end of the wire, and where that is. */
export interface EndPlace extends WirePlace {
  readonly end: CircuitEnd;
}

/**
 * The ends of the circuit and of its branches on the ruler, save at splices between them.
 * @example
 * endPlaces(sample.line).map(({ row, atMm }) => [row, atMm]) // => [[0, 0], [0, 1500]]
 */
export function endPlaces(line: CircuitLine): EndPlace[] {
  const [first, second] = line.circuit.ends;
  const ends = lineEnds(line);
  return [
    { row: 0, atMm: 0, end: first },
    { row: 0, atMm: line.mainMm, end: second },
    ...line.branches.map(({ toMm, end }, i) => ({ row: i + 1, atMm: toMm, end })),
  ].filter(({ end }) => ends.includes(end));
}

/**
 * Whether a place lies on one of the pieces.
 * @example
 * isReached([{ row: 0, fromMm: 0, toMm: 500 }], { row: 0, atMm: 600 }) // => false
 */
export function isReached(pieces: readonly ReachedPiece[], { row, atMm }: WirePlace): boolean {
  return pieces.some((piece) => piece.row === row && piece.fromMm <= atMm && atMm <= piece.toMm);
}

function chainsOf(line: CircuitLine): Chain[] {
  return [
    { fromMm: 0, toMm: line.mainMm, nodes: line.nodes, parent: null, joinMm: 0 },
    ...line.branches.map(({ fromMm, toMm, nodes, parent, joinMm }) => ({
      fromMm,
      toMm,
      nodes,
      parent: parent + 1,
      joinMm,
    })),
  ];
}
