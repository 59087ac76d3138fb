import type { StationLine } from '../geometry/station-line.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { Circuit, CircuitEnd, Segment } from '../map/records.ts';
import { segmentLine, wireLengthMm } from '../map/segment-line.ts';
import type { NodeId } from '../quantity/id.ts';
import { fail, ok, type Result } from '../quantity/result.ts';

/** One run's part of a traced circuit, placed on the circuit's own ruler. */
export interface CircuitSpan {
  readonly segment: Segment;
  readonly reversed: boolean;
  readonly line: StationLine;
  /** Circuit stations of this span, in mm of wire from the circuit's first end. */
  readonly fromMm: number;
  readonly toMm: number;
}

/** A node passed, with its station on the line's ruler. */
export interface PassedNode {
  readonly nodeId: NodeId;
  readonly stationMm: number;
}

/** A wire spliced to the circuit, laid from its splice outwards, after the circuit on the same ruler. */
export interface LineBranch {
  readonly circuit: Circuit;
  /** Branch it hangs on; -1 for the circuit itself. */
  readonly parent: number;
  /** Station, on the row it hangs on, of the splice. */
  readonly joinMm: number;
  readonly joinNodeId: NodeId;
  readonly fromMm: number;
  readonly toMm: number;
  /** Every node passed, the splice first. */
  readonly nodes: readonly PassedNode[];
  /** What sits at its far end. */
  readonly end: CircuitEnd;
}

/** A traced circuit laid straight: wire stations from its first end to its second, then its branches. */
export interface CircuitLine {
  readonly circuit: Circuit;
  readonly spans: readonly CircuitSpan[];
  /** The whole ruler. */
  readonly lengthMm: number;
  /** Where the circuit itself ends and its branches begin. */
  readonly mainMm: number;
  /** Every node passed by the circuit itself, both ends included, in order. */
  readonly nodes: readonly PassedNode[];
  readonly branches: readonly LineBranch[];
}

/**
 * Every node passed by the circuit and its branches, each branch after what it hangs on.
 * @example
 * allNodes(sample.line).length // => 4
 */
export function allNodes(line: CircuitLine): readonly PassedNode[] {
  return [...line.nodes, ...line.branches.flatMap(({ nodes }) => nodes)];
}

/**
 * What sits where the wires end: the circuit's own ends and those of its branches, save at splices between them.
 * @example
 * lineEnds(sample.line).map(({ kind }) => kind) // => ['module-input-pull-up', 'switch-to-ground']
 */
export function lineEnds({
  circuit,
  branches,
}: {
  readonly circuit: Circuit;
  readonly branches: readonly Pick<LineBranch, 'end' | 'joinNodeId'>[];
}): readonly CircuitEnd[] {
  const joints = new Set(branches.map(({ joinNodeId }) => joinNodeId));
  return [...circuit.ends, ...branches.map(({ end }) => end)].filter(
    ({ nodeId }) => nodeId === null || !joints.has(nodeId),
  );
}

/**
 * Lays a traced circuit straight. Refuses a circuit without a path (`circuit-untraced`), with a gap
 * (`circuit-broken`), over a missing or shapeless run, or that does not begin and end where its ends
 * say (`circuit-end-mismatch`).
 * @example
 * layStraight(sample.map, sample.circuit).value.lengthMm // => 1500
 */
export function layStraight(map: MapDocument, circuit: Circuit): Result<CircuitLine> {
  const first = circuit.path[0];
  if (!first) return fail({ code: 'circuit-untraced', circuit: circuit.id });
  const spans: CircuitSpan[] = [];
  const nodes: PassedNode[] = [];
  let stationMm = 0;
  let at: NodeId | null = null;
  let previous: string = first.segmentId;
  for (const step of circuit.path) {
    const segment = map.segments.get(step.segmentId);
    if (!segment)
      return fail({
        code: 'missing-reference',
        thing: circuit.id,
        field: 'path',
        missing: step.segmentId,
      });
    const line = segmentLine(map, segment);
    if (!line) return fail({ code: 'zero-length', thing: segment.id });
    const start = step.reversed ? segment.toNodeId : segment.fromNodeId;
    if (at !== null && at !== start) {
      return fail({
        code: 'circuit-broken',
        circuit: circuit.id,
        afterSegment: previous,
        nextSegment: segment.id,
      });
    }
    if (at === null) nodes.push({ nodeId: start, stationMm: 0 });
    const toMm: number = stationMm + wireLengthMm(segment, line.lengthMm);
    spans.push({
      segment,
      reversed: step.reversed,
      line,
      fromMm: stationMm,
      toMm,
    });
    stationMm = toMm;
    at = step.reversed ? segment.fromNodeId : segment.toNodeId;
    nodes.push({ nodeId: at, stationMm });
    previous = segment.id;
  }
  const [startEnd, finishEnd] = circuit.ends;
  const startNode = nodes[0]?.nodeId as NodeId;
  if (startEnd.nodeId !== null && startEnd.nodeId !== startNode) {
    return fail({
      code: 'circuit-end-mismatch',
      circuit: circuit.id,
      expectedNode: startEnd.nodeId,
      foundNode: startNode,
    });
  }
  if (finishEnd.nodeId !== null && finishEnd.nodeId !== at) {
    return fail({
      code: 'circuit-end-mismatch',
      circuit: circuit.id,
      expectedNode: finishEnd.nodeId,
      foundNode: at as NodeId,
    });
  }
  return ok({ circuit, spans, lengthMm: stationMm, mainMm: stationMm, nodes, branches: [] });
}

/**
 * Circuit station (mm of wire) of a station drawn on one of the circuit's runs.
 * @example
 * circuitStationMm(sample.line.spans[1], 100) // => 600
 */
export function circuitStationMm(span: CircuitSpan, segmentStationMm: number): number {
  const wirePerDrawn = (span.toMm - span.fromMm) / span.line.lengthMm;
  const along = span.reversed ? span.line.lengthMm - segmentStationMm : segmentStationMm;
  return span.fromMm + along * wirePerDrawn;
}

/**
 * Drawn station on the span's run of a circuit station within the span.
 * @example
 * segmentStationMm(sample.line.spans[1], 600) // => 100
 */
export function segmentStationMm(span: CircuitSpan, circuitMm: number): number {
  const drawnPerWire = span.line.lengthMm / (span.toMm - span.fromMm);
  const along = (circuitMm - span.fromMm) * drawnPerWire;
  return span.reversed ? span.line.lengthMm - along : along;
}

/**
 * The span that holds a circuit station; stations off either end give the end span. O(log spans).
 * @example
 * spanAt(sample.line, 600) === sample.line.spans[1] // => true
 */
export function spanAt(line: CircuitLine, stationMm: number): CircuitSpan {
  let low = 0;
  let high = line.spans.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((line.spans[middle] as CircuitSpan).fromMm <= stationMm) low = middle;
    else high = middle - 1;
  }
  return line.spans[low] as CircuitSpan;
}
