import type { StationLine } from '../geometry/station-line.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { Circuit, Segment } from '../map/records.ts';
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

/** A traced circuit laid straight: wire stations from its first end to its second. */
export interface CircuitLine {
  readonly circuit: Circuit;
  readonly spans: readonly CircuitSpan[];
  readonly lengthMm: number;
  /** Every node passed, both ends included, in order. */
  readonly nodes: readonly {
    readonly nodeId: NodeId;
    readonly stationMm: number;
  }[];
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
  const nodes: { nodeId: NodeId; stationMm: number }[] = [];
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
  return ok({ circuit, spans, lengthMm: stationMm, nodes });
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
