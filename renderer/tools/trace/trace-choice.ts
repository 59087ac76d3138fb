import { traceCircuit } from '#core/map/commands/trace-circuit.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Circuit, PathStep, Segment } from '#core/map/records.ts';
import { endsWires, tracePath } from '#core/map/trace-path.ts';
import { wayLengthMm } from '#core/map/trace-ways.ts';
import type { NodeId, SegmentId } from '#core/quantity/id.ts';
import { fail } from '#core/quantity/result.ts';
import type { ToolEffect, TraceChoice } from '../tool.ts';

/** What was wished of a circuit's way so far; for another circuit only that it keeps passing what ends other wires. */
export function choiceOf(choice: TraceChoice | null, map: MapDocument, circuit: Circuit): TraceChoice {
  if (choice?.circuitId === circuit.id) return choice;
  return { circuitId: circuit.id, via: passedEnds(map, circuit), avoid: [] };
}

/** Nodes on a circuit's way that a trace would not pass by itself, in order. */
export function passedEnds(map: MapDocument, circuit: Circuit): readonly NodeId[] {
  return circuit.path.slice(1).flatMap(({ segmentId, reversed }) => {
    const segment = map.segments.get(segmentId);
    const start = segment && map.nodes.get(reversed ? segment.toNodeId : segment.fromNodeId);
    return start && endsWires(start.kind) ? [start.id] : [];
  });
}

const pathBy = (map: MapDocument, circuit: Circuit, { via, avoid }: TraceChoice) => {
  const [from, to] = circuit.ends;
  if (from.nodeId === null || to.nodeId === null) return null;
  const path = tracePath(map, {
    fromNodeId: from.nodeId,
    toNodeId: to.nodeId,
    viaNodeIds: via,
    avoidSegmentIds: avoid,
  });
  return path.ok ? path.value : null;
};

/** The wish with one run added to pass, whichever way round and wherever among the others is shortest; null when there is no such way. */
export function traceThrough(
  map: MapDocument,
  circuit: Circuit,
  choice: TraceChoice,
  segmentId: SegmentId,
): TraceChoice | null {
  const segment = map.segments.get(segmentId);
  if (!segment) return null;
  const avoid = choice.avoid.filter((id) => id !== segmentId);
  let best: TraceChoice | null = null;
  let bestMm = Number.POSITIVE_INFINITY;
  for (let at = 0; at <= choice.via.length; at++) {
    for (const pair of [
      [segment.fromNodeId, segment.toNodeId],
      [segment.toNodeId, segment.fromNodeId],
    ]) {
      const via = withoutEnds(circuit, choice.via.toSpliced(at, 0, ...pair));
      const wish: TraceChoice = { ...choice, via, avoid: [...avoid, ...shorterThan(map, segment, avoid)] };
      const path = pathBy(map, circuit, wish);
      if (!path?.some((step) => step.segmentId === segmentId) || passesTwice(path)) continue;
      const mm = wayLengthMm(map, path);
      if (mm >= bestMm) continue;
      best = wish;
      bestMm = mm;
    }
  }
  return best;
}

/** A loom has few runs beside one another; past this many the pressed one is not the way. */
const mostShorter = 8;

/** Runs between the ends of one that would be taken in its place, since they are shorter. */
function shorterThan(map: MapDocument, segment: Segment, avoid: readonly SegmentId[]): readonly SegmentId[] {
  const shorter: SegmentId[] = [];
  for (let i = 0; i < mostShorter; i++) {
    const leg = tracePath(map, {
      fromNodeId: segment.fromNodeId,
      toNodeId: segment.toNodeId,
      avoidSegmentIds: [...avoid, ...shorter],
    });
    if (!leg.ok || leg.value.some((step) => step.segmentId === segment.id)) break;
    shorter.push(...leg.value.map((step) => step.segmentId));
  }
  return shorter;
}

/** Stops named twice running, or the circuit's own ends, ask for nothing. */
function withoutEnds(circuit: Circuit, via: readonly NodeId[]): readonly NodeId[] {
  const [from, to] = circuit.ends;
  const stops = via.filter((id, i) => id !== via[i - 1]);
  const first = stops[0] === from.nodeId ? stops.slice(1) : stops;
  return first.at(-1) === to.nodeId ? first.slice(0, -1) : first;
}

/** A wire that runs through one piece of loom twice is not what was meant. */
const passesTwice = (path: readonly PathStep[]): boolean =>
  new Set(path.map((step) => step.segmentId)).size < path.length;

/** The circuit traced anew by what is wished, and the wish kept. */
export function traceEffects(map: MapDocument, circuit: Circuit, choice: TraceChoice): readonly ToolEffect[] {
  const [from, to] = circuit.ends;
  const patch =
    from.nodeId === null || to.nodeId === null
      ? fail({ code: 'circuit-untraced', circuit: circuit.id } as const)
      : traceCircuit(map, {
          circuitId: circuit.id,
          fromNodeId: from.nodeId,
          toNodeId: to.nodeId,
          viaNodeIds: choice.via,
          avoidSegmentIds: choice.avoid,
        });
  const edit = { type: 'edit' as const, label: 'edit.traceCircuit', patch };
  return patch.ok ? [edit, { type: 'trace', choice }] : [edit];
}
