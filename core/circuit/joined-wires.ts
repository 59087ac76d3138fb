import type { MapDocument } from '../map/map-document.ts';
import type { Circuit } from '../map/records.ts';
import { compareText } from '../quantity/compare-text.ts';
import type { NodeId } from '../quantity/id.ts';
import { ok, type Result } from '../quantity/result.ts';
import { type CircuitLine, type CircuitSpan, type LineBranch, layStraight } from './circuit-line.ts';

/** More wires than this on one splice tree is a slip on the map, not a circuit. */
const mostBranches = 40;

/**
 * The circuit laid straight with every wire spliced to it laid after it on the same ruler, each from its
 * splice outwards. A circuit on which nothing is spliced comes back as it is. O(circuits x their nodes).
 * @example
 * withBranches(sample.map, sample.line).branches // => []
 */
export function withBranches(map: MapDocument, line: CircuitLine): CircuitLine {
  const branches: LineBranch[] = [];
  const spans: CircuitSpan[] = [...line.spans];
  const met = new Set<string>([line.circuit.id]);
  let lengthMm = line.mainMm;
  const chains = [{ circuit: line.circuit, nodes: line.nodes }];
  for (let at = 0; at < chains.length; at++) {
    const chain = chains[at] as (typeof chains)[number];
    for (const { nodeId, stationMm } of chain.nodes)
      for (const circuit of splicedTo(map, chain.circuit, nodeId)) {
        if (met.has(circuit.id) || branches.length >= mostBranches) continue;
        met.add(circuit.id);
        const laid = layStraight(map, circuit);
        if (!laid.ok) continue;
        for (const piece of outwards(laid.value, nodeId, lengthMm)) {
          const parent = at - 1;
          const { spans: own, ...rest } = piece;
          branches.push({ circuit, parent, joinMm: stationMm, joinNodeId: nodeId, ...rest });
          spans.push(...own);
          lengthMm = piece.toMm;
          chains.push({ circuit, nodes: piece.nodes });
        }
      }
  }
  return branches.length === 0 ? line : { ...line, spans, lengthMm, branches };
}

/**
 * A circuit laid straight with what is spliced to it; refuses as `layStraight` does.
 * @example
 * layJoined(sample.map, sample.circuit).value.lengthMm // => 1500
 */
export function layJoined(map: MapDocument, circuit: Circuit): Result<CircuitLine> {
  const laid = layStraight(map, circuit);
  return laid.ok ? ok(withBranches(map, laid.value)) : laid;
}

/**
 * Other circuits spliced to a circuit at a node: with the same pin word there; without pin words, those of
 * which at least one ends at the splice. One that runs through counts only when it is the only one that
 * does, or the only one of the ended wires' colours: the rest of the loom passes a splice by.
 * @example
 * splicedTo(sample.map, sample.circuit, 'node:middle') // => []
 */
export function splicedTo(map: MapDocument, circuit: Circuit, nodeId: NodeId): readonly Circuit[] {
  if (map.nodes.get(nodeId)?.kind !== 'splice') return [];
  const here = [...map.circuits.values()]
    .filter((each) => passes(map, each, nodeId))
    .sort((a, b) => compareText(a.id, b.id));
  const pin = pinAt(circuit, nodeId);
  const others = here.filter((each) => each.id !== circuit.id && pinAt(each, nodeId) === pin);
  if (pin !== null) return others;
  const group = [circuit, ...others];
  const ended = group.filter((each) => endsAt(each, nodeId));
  const through = group.filter((each) => !endsAt(each, nodeId));
  const alike = through.filter((each) => ended.some((end) => sameColours(end, each)));
  const trunk = through.length === 1 ? through : alike.length === 1 ? alike : [];
  const joined = ended.length > 0 ? [...ended, ...trunk] : [];
  return joined.includes(circuit) ? joined.filter((each) => each !== circuit) : [];
}

function passes(map: MapDocument, circuit: Circuit, nodeId: NodeId): boolean {
  return circuit.path.some(({ segmentId }) => {
    const segment = map.segments.get(segmentId);
    return segment?.fromNodeId === nodeId || segment?.toNodeId === nodeId;
  });
}

function endsAt({ ends }: Circuit, nodeId: NodeId): boolean {
  return ends.some((end) => end.nodeId === nodeId);
}

function pinAt({ pins }: Circuit, nodeId: NodeId): string | null {
  return pins.find((each) => each.nodeId === nodeId && each.pin !== '')?.pin ?? null;
}

function sameColours(a: Circuit, b: Circuit): boolean {
  return a.wireColours.length > 0 && a.wireColours.join(' ') === b.wireColours.join(' ');
}

type Piece = Pick<LineBranch, 'fromMm' | 'toMm' | 'nodes' | 'end'> & {
  readonly spans: readonly CircuitSpan[];
};

/** A circuit's wire from a node on it to its second end, and to its first, on a ruler that begins at `fromMm`. */
function outwards(laid: CircuitLine, nodeId: NodeId, fromMm: number): Piece[] {
  const joint = laid.nodes.findIndex((node) => node.nodeId === nodeId);
  const jointMm = laid.nodes[joint]?.stationMm ?? 0;
  const pieces: Piece[] = [];
  if (jointMm < laid.mainMm) {
    const on = (mm: number): number => fromMm + mm - jointMm;
    pieces.push({
      fromMm,
      toMm: on(laid.mainMm),
      nodes: laid.nodes.slice(joint).map((node) => ({ ...node, stationMm: on(node.stationMm) })),
      end: laid.circuit.ends[1],
      spans: laid.spans
        .slice(joint)
        .map((span) => ({ ...span, fromMm: on(span.fromMm), toMm: on(span.toMm) })),
    });
  }
  if (jointMm > 0) {
    const beginsMm = pieces[0]?.toMm ?? fromMm;
    const on = (mm: number): number => beginsMm + jointMm - mm;
    pieces.push({
      fromMm: beginsMm,
      toMm: beginsMm + jointMm,
      nodes: laid.nodes
        .slice(0, joint + 1)
        .reverse()
        .map((node) => ({ ...node, stationMm: on(node.stationMm) })),
      end: laid.circuit.ends[0],
      spans: laid.spans
        .slice(0, joint)
        .reverse()
        .map((span) => ({
          ...span,
          reversed: !span.reversed,
          fromMm: on(span.toMm),
          toMm: on(span.fromMm),
        })),
    });
  }
  return pieces;
}
