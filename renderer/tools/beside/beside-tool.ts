import { parallelLine } from '#core/geometry/parallel-line.ts';
import type { PlanPoint } from '#core/geometry/place.ts';
import { parallelRun } from '#core/map/commands/parallel-run.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { SegmentId } from '#core/quantity/id.ts';
import { nearestOnLine } from '../../board/nearest-on-line.ts';
import { emptyOverlay, type Overlay } from '../../board/overlay.ts';
import { runLine } from '../../board/run-line.ts';
import { drawWords } from '../../language/draw.ts';
import { sayDrawnLength } from '../../language/say-drawn-length.ts';
import { freeName } from '../free-name.ts';
import { routeNames } from '../route/route-names.ts';
import { stay, type Tool, type ToolStep, type ToolView } from '../tool.ts';

/** The run to draw beside, and how far off the pointer is: positive to its right, walked from its first node. */
export interface BesideState {
  readonly segmentId: SegmentId | null;
  readonly offsetMm: number | null;
  readonly pointer: PlanPoint | null;
}

/** Offsets are whole 5 mm while pulled by hand; a typed one is as typed. */
const pulledStepMm = 5;

/** Run beside: press a run, pull to the side, press again or Enter. */
export const besideTool: Tool<BesideState> = {
  start: { segmentId: null, offsetMm: null, pointer: null },
  step(state, event, view) {
    if (event.type === 'key') {
      if (event.key === 'Enter') return laid(state, view);
      return stay(besideTool.start);
    }
    if (event.type === 'up' || event.type === 'double') return stay(state);
    const run = event.hits.find((hit) => hit.kind === 'segment');
    if (event.type === 'move') {
      if (!state.segmentId) return stay({ ...state, pointer: run?.at ?? null });
      return stay({ ...state, pointer: event.at, offsetMm: offsetTo(view.map, state.segmentId, event.at) });
    }
    if (!state.segmentId) {
      return run ? stay({ segmentId: run.id, offsetMm: null, pointer: event.at }) : stay(state);
    }
    const offsetMm = offsetTo(view.map, state.segmentId, event.at);
    return laid({ ...state, offsetMm }, view);
  },
  overlay: besideOverlay,
};

/** How far a place lies from a run in plan, signed; null for one on the run. */
function offsetTo(map: MapDocument, segmentId: SegmentId, at: PlanPoint): number | null {
  const segment = map.segments.get(segmentId);
  const line = segment && runLine(map, segment);
  if (!line) return null;
  const near = nearestOnLine(line.points, at);
  const a = line.points[near.piece];
  const b = line.points[near.piece + 1];
  if (!a || !b) return null;
  const leftward = (b.xMm - a.xMm) * (at.yMm - a.yMm) - (b.yMm - a.yMm) * (at.xMm - a.xMm);
  const mm = Math.round(near.distanceMm / pulledStepMm) * pulledStepMm;
  return mm === 0 ? null : leftward > 0 ? -mm : mm;
}

/** A run beside another as an edit; also typed beside the board. */
export function besideEdit(view: Pick<ToolView, 'map' | 'chance'>, segmentId: SegmentId, offsetMm: number) {
  const routeName = freeName(drawWords.records.route, routeNames(view.map));
  const patch = parallelRun(view.map, { segmentId, offsetMm, routeName }, view.chance);
  const select = patch.ok
    ? patch.value.added.filter((record) => 'routeName' in record).map((record) => record.id)
    : [];
  return { type: 'edit' as const, label: 'edit.parallelRun', patch, ...(patch.ok ? { select } : {}) };
}

function laid(state: BesideState, view: ToolView): ToolStep<BesideState> {
  const { segmentId, offsetMm } = state;
  if (!segmentId || offsetMm === null) return stay(state);
  const edit = besideEdit(view, segmentId, offsetMm);
  return { state: edit.patch.ok ? besideTool.start : state, effects: [edit] };
}

function besideOverlay({ segmentId, offsetMm, pointer }: BesideState, view: ToolView): Overlay {
  const segment = segmentId && view.map.segments.get(segmentId);
  const line = segment && runLine(view.map, segment);
  if (!line) {
    return pointer ? { ...emptyOverlay, points: [{ at: pointer, style: 'snap' }] } : emptyOverlay;
  }
  const held = { points: line.points, closed: false, style: 'measure' as const };
  if (offsetMm === null) return { ...emptyOverlay, lines: [held] };
  const beside = parallelLine(line.points, offsetMm);
  return {
    ...emptyOverlay,
    lines: [held, { points: beside, closed: false, style: 'loose' }],
    labels: pointer ? [{ at: pointer, ...sayDrawnLength(Math.abs(offsetMm), view.lengths) }] : [],
  };
}
