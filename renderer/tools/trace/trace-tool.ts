import { addCircuit } from '#core/map/commands/add-circuit.ts';
import type { CircuitEndKind, NodeKind } from '#core/map/kinds.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Circuit, PathStep } from '#core/map/records.ts';
import { tracePath } from '#core/map/trace-path.ts';
import { type CircuitId, type NodeId, newId } from '#core/quantity/id.ts';
import { emptyOverlay, type Overlay } from '../../board/overlay.ts';
import { runLine } from '../../board/run-line.ts';
import { drawWords } from '../../language/draw.ts';
import { sayDrawnLength } from '../../language/say-drawn-length.ts';
import { freeName, nextOrder } from '../free-name.ts';
import { type PointerInput, stay, type Tool, type ToolStep, type ToolView } from '../tool.ts';
import { choiceOf, traceEffects, traceThrough } from './trace-choice.ts';

export interface TraceEnds {
  readonly from: NodeId | null;
  /** The node under the pointer: where the circuit would end. */
  readonly over: NodeId | null;
}

/** What usually sits at such a node; the user puts it right beside the board. */
const usualEnd: Readonly<Partial<Record<NodeKind, CircuitEndKind>>> = {
  module: 'module-input-pull-up',
  switch: 'switch-to-ground',
  sensor: 'sensor',
  load: 'load',
  'fuse-box': 'fused-supply',
  'ground-point': 'ground-point',
};

/**
 * Circuit: the node at one end, then the node at the other; the shortest way for a wire is offered. With a
 * circuit picked, a press on a run sends it that way.
 */
export const traceTool: Tool<TraceEnds> = {
  start: { from: null, over: null },
  step(state, event, view) {
    if (event.type === 'key') return stay(event.key === 'Enter' ? state : traceTool.start);
    const nodeId = (event.hits.find((hit) => hit.kind === 'node')?.id as NodeId | undefined) ?? null;
    if (event.type !== 'down') return stay({ ...state, over: nodeId });
    if (!nodeId && !state.from) return sentThrough(state, event, view);
    if (!nodeId || nodeId === state.from) return stay({ ...state, over: nodeId });
    if (!state.from) return stay({ from: nodeId, over: null });
    const path = tracePath(view.map, { fromNodeId: state.from, toNodeId: nodeId });
    const id = newId('circuit', view.chance);
    const end = (at: NodeId) => ({
      nodeId: at,
      kind: usualEnd[view.map.nodes.get(at)?.kind ?? 'branch'] ?? ('other' as const),
    });
    const patch = path.ok
      ? addCircuit(view.map, {
          circuit: {
            id,
            name: freeName(drawWords.records.circuit, view.map.circuits.values()),
            wireColours: [],
            conductorMm2: 0.5,
            insulation: 'thin-wall',
            duty: 'ordinary',
            fuseA: null,
            path: [...path.value],
            pins: [],
            ends: [end(state.from), end(nodeId)],
            note: '',
            order: nextOrder(view.map.circuits.values()),
          },
        })
      : path;
    return {
      state: traceTool.start,
      effects: [{ type: 'edit', label: 'edit.addCircuit', patch, select: [id] }],
    };
  },
  overlay: traceOverlay,
};

/** The picked circuit traced through the pressed run as well. */
function sentThrough(state: TraceEnds, event: PointerInput, view: ToolView): ToolStep<TraceEnds> {
  const circuit = pickedCircuit(view);
  const run = event.hits.find((hit) => hit.kind === 'segment');
  if (!circuit || !run) return stay(state);
  const choice = traceThrough(view.map, circuit, choiceOf(view.traceChoice, view.map, circuit), run.id);
  return choice ? { state, effects: traceEffects(view.map, circuit, choice) } : stay(state);
}

/** The circuit that is picked alone and has both ends. */
function pickedCircuit({ map, selection }: ToolView): Circuit | null {
  const [only] = selection;
  if (!only || selection.length > 1) return null;
  return map.circuits.get(only as CircuitId) ?? null;
}

function traceOverlay({ from, over }: TraceEnds, view: ToolView): Overlay {
  const { map } = view;
  const ends = [from, over].flatMap((id) => (id ? (map.nodes.get(id) ?? []) : []));
  const points = ends.map((node) => ({ at: node.at, style: 'snap' as const }));
  if (!from || !over || from === over) return { ...emptyOverlay, points };
  const path = tracePath(map, { fromNodeId: from, toNodeId: over });
  const end = map.nodes.get(over);
  if (!path.ok || !end) return { ...emptyOverlay, points };
  const lines = pathLines(map, path.value);
  const lengthMm = lines.reduce((sum, line) => sum + line.lengthMm, 0);
  return {
    lines: lines.map((line) => ({ points: line.points, closed: false, style: 'firm' as const })),
    points,
    labels: [{ at: end.at, ...sayDrawnLength(lengthMm, view.lengths) }],
    box: null,
  };
}

const pathLines = (map: MapDocument, path: readonly PathStep[]) =>
  path.flatMap((step) => {
    const segment = map.segments.get(step.segmentId);
    const line = segment && runLine(map, segment);
    return line ? [line] : [];
  });
