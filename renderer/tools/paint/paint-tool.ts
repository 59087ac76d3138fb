import type { PlanPoint } from '#core/geometry/place.ts';
import { setTag } from '#core/map/commands/set-tag.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Patch } from '#core/map/patch.ts';
import type { Segment } from '#core/map/records.ts';
import type { PanelId, SegmentId } from '#core/quantity/id.ts';
import type { Result } from '#core/quantity/result.ts';
import type { Hit } from '../../board/hit.ts';
import { emptyOverlay, type Overlay, type OverlayLine } from '../../board/overlay.ts';
import { stretchPoints } from '../../board/paint/stretch-points.ts';
import { runLine } from '../../board/run-line.ts';
import { sayDrawnLength } from '../../language/say-drawn-length.ts';
import { inTurn } from '../../session/in-turn.ts';
import { stay, type Tool, type ToolStep, type ToolView } from '../tool.ts';

/** A stretch of a run that was gone over. */
export interface PaintedStretch {
  readonly segmentId: SegmentId;
  readonly fromMm: number;
  readonly toMm: number;
}

export interface PaintState {
  /** In the order they were gone over; empty while nothing is being painted. */
  readonly stretches: readonly PaintedStretch[];
  readonly wiping: boolean;
  readonly aim: PlanPoint | null;
}

const start: PaintState = { stretches: [], wiping: false, aim: null };

/** Paint panel: drag along runs to say where the chosen panel hides them; with alt, to say where it does not. */
export const paintTool: Tool<PaintState> = {
  start,
  step(state, event, view) {
    if (event.type === 'key') {
      return event.key === 'Enter'
        ? stay(state)
        : { state: { ...start, aim: state.aim }, effects: [{ type: 'preview', patch: null }] };
    }
    const run = runUnder(event.hits);
    const panelId = view.choices.paintPanelId;
    if (event.type === 'down') {
      if (!run || !panelId) return stay(state);
      const { id: segmentId, stationMm } = run;
      return stay({
        stretches: [{ segmentId, fromMm: stationMm, toMm: stationMm }],
        wiping: event.alt,
        aim: run.at,
      });
    }
    const painting = state.stretches.length > 0 && panelId !== null;
    const next = run && painting ? goneOver(view.map, state, run) : state;
    if (event.type === 'up') return done(next, view, panelId);
    const moved = { ...next, aim: run?.at ?? null };
    if (!painting || next === state) return stay(moved);
    const patch = paintPatch(view.map, moved, panelId);
    return { state: moved, effects: patch.ok ? [{ type: 'preview', patch: patch.value }] : [] };
  },
  overlay: paintOverlay,
};

const runUnder = (hits: readonly Hit[]) => hits.find((hit) => hit.kind === 'segment');

/** The stretches with the pointer's new place: the same run goes on, a neighbour begins at the node they share. */
function goneOver(
  map: MapDocument,
  state: PaintState,
  { id: segmentId, stationMm }: { readonly id: SegmentId; readonly stationMm: number },
): PaintState {
  const last = state.stretches.at(-1) as PaintedStretch;
  if (last.segmentId === segmentId) {
    return { ...state, stretches: state.stretches.with(-1, widened(last, stationMm)) };
  }
  const before = map.segments.get(last.segmentId);
  const after = map.segments.get(segmentId);
  if (!before || !after) return state;
  const shared = [before.fromNodeId, before.toNodeId].find(
    (id) => id === after.fromNodeId || id === after.toNodeId,
  );
  // A run that merely crosses is not meant.
  if (!shared) return state;
  const leftMm = stationOfEnd(map, before, shared);
  const enteredMm = stationOfEnd(map, after, shared);
  const earlier = state.stretches.find((each) => each.segmentId === segmentId);
  const stretch = widened(earlier ?? { segmentId, fromMm: enteredMm, toMm: enteredMm }, stationMm);
  const others = state.stretches
    .with(-1, widened(last, leftMm))
    .filter((each) => each.segmentId !== segmentId);
  return { ...state, stretches: [...others, stretch] };
}

const widened = (stretch: PaintedStretch, toMm: number): PaintedStretch => ({
  ...stretch,
  fromMm: Math.min(stretch.fromMm, toMm),
  toMm: Math.max(stretch.toMm, toMm),
});

const stationOfEnd = (map: MapDocument, segment: Segment, nodeId: string): number =>
  segment.fromNodeId === nodeId ? 0 : (runLine(map, segment)?.lengthMm ?? 0);

/** Shorter than this a press slipped; nothing is painted. */
const leastMm = 5;

function done(state: PaintState, view: ToolView, panelId: PanelId | null): ToolStep<PaintState> {
  const rest = { ...start, aim: state.aim };
  const painted = state.stretches.some(({ fromMm, toMm }) => toMm - fromMm >= leastMm);
  if (!painted || !panelId) return { state: rest, effects: [{ type: 'preview', patch: null }] };
  const patch = paintPatch(view.map, state, panelId);
  return {
    state: rest,
    effects: [
      { type: 'preview', patch: null },
      { type: 'edit', label: 'edit.setTag', patch },
    ],
  };
}

function paintPatch(map: MapDocument, { stretches, wiping }: PaintState, panelId: PanelId): Result<Patch> {
  return inTurn(
    map,
    ...stretches
      .filter(({ fromMm, toMm }) => toMm > fromMm)
      .map((stretch) => (now: MapDocument) => setTag(now, { ...stretch, panelId, over: !wiping })),
  );
}

/** Where the chosen panel hides runs now, what is being painted, and its length. */
function paintOverlay({ stretches, wiping, aim }: PaintState, view: ToolView): Overlay {
  const { map } = view;
  const panelId = view.choices.paintPanelId;
  const lines: OverlayLine[] = [];
  for (const segment of map.segments.values()) {
    for (const tag of segment.tags) {
      if (tag.panelId !== panelId) continue;
      const points = pointsBetween(map, segment, tag.fromMm, tag.toMm);
      lines.push({ points, closed: false, style: tag.confirmed ? 'band' : 'thin-band' });
    }
  }
  let lengthMm = 0;
  for (const { segmentId, fromMm, toMm } of stretches) {
    const segment = map.segments.get(segmentId);
    if (!segment) continue;
    lengthMm += toMm - fromMm;
    const points = pointsBetween(map, segment, fromMm, toMm);
    lines.push({ points, closed: false, style: wiping ? 'loose' : 'band' });
  }
  return {
    ...emptyOverlay,
    lines,
    points: aim && panelId ? [{ at: aim, style: 'snap' }] : [],
    labels: aim && lengthMm > 0 ? [{ at: aim, ...sayDrawnLength(lengthMm, view.lengths) }] : [],
  };
}

function pointsBetween(
  map: MapDocument,
  segment: Segment,
  fromMm: number,
  toMm: number,
): readonly PlanPoint[] {
  const line = runLine(map, segment);
  return line ? stretchPoints(line, fromMm, toMm) : [];
}
