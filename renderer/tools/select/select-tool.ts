import type { Bounds } from '#core/geometry/bounds.ts';
import type { PlanPoint } from '#core/geometry/place.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Selection } from '#core/map/transaction.ts';
import { compareText } from '#core/quantity/compare-text.ts';
import { idKind } from '#core/quantity/id.ts';
import { idsInBox } from '../../board/board-index.ts';
import { handleAt, handlesOf } from '../../board/handles.ts';
import type { Hit } from '../../board/hit.ts';
import { outlineLine } from '../../board/outline-line.ts';
import { emptyOverlay } from '../../board/overlay.ts';
import { runLine } from '../../board/run-line.ts';
import { lengthLabel } from '../live-length.ts';
import { type PointerInput, stay, type Tool, type ToolStep, type ToolView } from '../tool.ts';
import { insertCorner, removeCorner } from './corners.ts';
import { dragLabel, dragPatch, type Grip } from './drag.ts';

export type SelectState =
  | { readonly at: 'rest' }
  | { readonly at: 'pressed'; readonly from: PlanPoint; readonly grip: Grip | null; readonly shift: boolean }
  | { readonly at: 'dragging'; readonly from: PlanPoint; readonly to: PlanPoint; readonly grip: Grip }
  | { readonly at: 'boxing'; readonly from: PlanPoint; readonly to: PlanPoint; readonly shift: boolean };

const rest: SelectState = { at: 'rest' };
/** A hand shakes this much when it only presses. */
const stillPx = 4;

/** Select and move: press picks, drag moves what is picked or draws a box, a double press adds a corner. */
export const selectTool: Tool<SelectState> = {
  start: rest,
  step(state, event, view) {
    if (event.type === 'key') return onKey(state, event.key, view);
    switch (event.type) {
      case 'down':
        return pressed(event, view);
      case 'double':
        return doublePressed(event, view);
      case 'move':
        return moved(state, event, view);
      case 'up':
        return letGo(state, event, view);
    }
  },
  overlay(state, view) {
    if (state.at === 'boxing') return { ...emptyOverlay, box: boxOf(state.from, state.to) };
    if (state.at === 'dragging') {
      return { ...emptyOverlay, labels: lengthLabel([state.from, state.to], state.to, view.lengths) };
    }
    return emptyOverlay;
  },
};

function onKey(state: SelectState, key: string, view: ToolView): ToolStep<SelectState> {
  if (key === 'Escape') {
    if (state.at === 'dragging') return { state: rest, effects: [{ type: 'preview', patch: null }] };
    if (state.at === 'rest') return { state: rest, effects: [{ type: 'select', ids: [] }] };
    return stay(rest);
  }
  if ((key === 'Delete' || key === 'Backspace') && state.at === 'rest' && view.selection.length > 0) {
    return { state, effects: [{ type: 'remove', ids: view.selection }] };
  }
  return stay(state);
}

function pressed(event: PointerInput, view: ToolView): ToolStep<SelectState> {
  const handle = handleAt(handlesOf(view.map, view.selection), event.at, event.reachMm);
  if (handle && event.alt) {
    const patch = removeCorner(view.map, handle);
    return { state: rest, effects: [{ type: 'edit', label: 'edit.removeCorner', patch }] };
  }
  if (handle) {
    const grip: Grip = { kind: 'handle', handle };
    return stay({ at: 'pressed', from: handle.at, grip, shift: event.shift });
  }
  const hit = event.hits[0];
  if (!hit) {
    const effects = event.shift ? [] : [{ type: 'select', ids: [] } as const];
    return { state: { at: 'pressed', from: event.at, grip: null, shift: event.shift }, effects };
  }
  const picked = view.selection.includes(hit.id);
  const grip = gripOn(hit, picked, view.selection);
  const state: SelectState = { at: 'pressed', from: event.at, grip, shift: event.shift };
  if (event.shift) {
    const ids = picked ? view.selection.filter((id) => id !== hit.id) : [...view.selection, hit.id];
    return { state: { ...state, grip: null }, effects: [{ type: 'select', ids }] };
  }
  return picked ? stay(state) : { state, effects: [{ type: 'select', ids: [hit.id] }] };
}

/**
 * What a drag from here would move. Small things go at once; a run, outline or panel only when it was
 * picked before, since it lies under much of the board and a box is then meant.
 */
function gripOn(hit: Hit, picked: boolean, selection: Selection): Grip | null {
  if (hit.kind === 'clip') return { kind: 'clip', id: hit.id, segmentId: hit.segmentId };
  if (picked) return { kind: 'things', ids: selection.filter((id) => idKind(id) !== 'clip') };
  return hit.kind === 'node' || hit.kind === 'rub-spot' ? { kind: 'things', ids: [hit.id] } : null;
}

function doublePressed(event: PointerInput, view: ToolView): ToolStep<SelectState> {
  const hit = event.hits.find((each) => view.selection.includes(each.id));
  const patch = hit ? insertCorner(view.map, hit) : null;
  if (!patch) return stay(rest);
  return { state: rest, effects: [{ type: 'edit', label: 'edit.insertCorner', patch }] };
}

function moved(state: SelectState, event: PointerInput, view: ToolView): ToolStep<SelectState> {
  if (state.at === 'rest') return stay(state);
  if (state.at === 'pressed') {
    const movedPx = Math.hypot(event.at.xMm - state.from.xMm, event.at.yMm - state.from.yMm) * view.pxPerMm;
    if (movedPx < stillPx) return stay(state);
    if (!state.grip) return stay({ at: 'boxing', from: state.from, to: event.at, shift: state.shift });
    return dragged({ at: 'dragging', from: state.from, to: event.at, grip: state.grip }, view);
  }
  if (state.at === 'boxing') return stay({ ...state, to: event.at });
  return dragged({ ...state, to: event.at }, view);
}

function dragged(state: Extract<SelectState, { at: 'dragging' }>, view: ToolView): ToolStep<SelectState> {
  const patch = dragPatch(view.map, state.grip, state.from, state.to);
  // Where the thing cannot go it stays at the last place where it could.
  return patch.ok ? { state, effects: [{ type: 'preview', patch: patch.value }] } : stay(state);
}

function letGo(state: SelectState, event: PointerInput, view: ToolView): ToolStep<SelectState> {
  if (state.at === 'dragging') {
    const patch = dragPatch(view.map, state.grip, state.from, event.at);
    return {
      state: rest,
      effects: [
        { type: 'preview', patch: null },
        { type: 'edit', label: dragLabel(state.grip), patch },
      ],
    };
  }
  if (state.at === 'boxing') {
    const inside = idsInside(view, boxOf(state.from, event.at));
    const ids = state.shift ? [...new Set([...view.selection, ...inside])] : inside;
    return { state: rest, effects: [{ type: 'select', ids }] };
  }
  return stay(rest);
}

function boxOf(a: PlanPoint, b: PlanPoint): Bounds {
  return {
    minXMm: Math.min(a.xMm, b.xMm),
    minYMm: Math.min(a.yMm, b.yMm),
    maxXMm: Math.max(a.xMm, b.xMm),
    maxYMm: Math.max(a.yMm, b.yMm),
  };
}

/** What lies wholly in a box, in order of id. */
function idsInside(view: ToolView, box: Bounds): readonly string[] {
  const within = ({ xMm, yMm }: PlanPoint): boolean =>
    xMm >= box.minXMm && xMm <= box.maxXMm && yMm >= box.minYMm && yMm <= box.maxYMm;
  return [...idsInBox(view.index, box)]
    .filter((id) => {
      const points = pointsOf(view.map, id);
      return points.length > 0 && points.every(within);
    })
    .sort(compareText);
}

function pointsOf(map: MapDocument, id: string): readonly PlanPoint[] {
  switch (idKind(id)) {
    case 'node': {
      const node = map.nodes.get(id as `node:${string}`);
      return node ? [node.at] : [];
    }
    case 'segment': {
      const segment = map.segments.get(id as `segment:${string}`);
      return (segment && runLine(map, segment)?.points) ?? [];
    }
    case 'panel':
      return map.panels.get(id as `panel:${string}`)?.area ?? [];
    case 'rub-spot':
      return map.rubSpots.get(id as `rub-spot:${string}`)?.points ?? [];
    case 'outline': {
      const outline = map.outlines.get(id as `outline:${string}`);
      return outline ? outlineLine(outline) : [];
    }
    default:
      return [];
  }
}
