import type { Bounds } from '#core/geometry/bounds.ts';
import type { PlanPoint } from '#core/geometry/place.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Selection } from '#core/map/transaction.ts';
import { compareText } from '#core/quantity/compare-text.ts';
import { idKind, type NodeId, type OutlineId, type RubSpotId } from '#core/quantity/id.ts';
import { idsInBox } from '../../board/board-index.ts';
import { type Handle, handleAt, handlesOf } from '../../board/handles.ts';
import type { Hit } from '../../board/hit.ts';
import { outlineLine } from '../../board/outline-line.ts';
import { emptyOverlay, type Overlay } from '../../board/overlay.ts';
import { runLine } from '../../board/run-line.ts';
import { lengthLabel } from '../live-length.ts';
import { snapped } from '../snap.ts';
import { type PointerInput, stay, type Tool, type ToolStep, type ToolView } from '../tool.ts';
import { insertCorner, removeCorner } from './corners.ts';
import { type CurveGrip, curveGripsOf } from './curve-grips.ts';
import { dragLabel, dragPatch, type Grip } from './drag.ts';

export type SelectState =
  /** `corner` was pressed last: it can be bent, rounded and taken out. */
  | { readonly at: 'rest'; readonly corner?: Handle }
  | {
      readonly at: 'pressed';
      readonly from: PlanPoint;
      readonly grip: Grip | null;
      readonly shift: boolean;
      /** One of several that are picked: let go without a drag, it is picked alone. */
      readonly oneOf?: string;
    }
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
        return pressed(state, event, view);
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
    const corner = state.at === 'rest' ? cornerInHand(state, view) : null;
    return corner ? gripsOverlay(corner, view) : emptyOverlay;
  },
};

function onKey(state: SelectState, key: string, view: ToolView): ToolStep<SelectState> {
  if (key === 'Escape') {
    if (state.at === 'dragging') return { state: rest, effects: [{ type: 'preview', patch: null }] };
    if (state.at === 'rest' && state.corner) return stay(rest);
    if (state.at === 'rest') return { state: rest, effects: [{ type: 'select', ids: [] }] };
    return stay(rest);
  }
  if ((key === 'Delete' || key === 'Backspace') && state.at === 'rest' && view.selection.length > 0) {
    return { state, effects: [{ type: 'remove', ids: view.selection }] };
  }
  return stay(state);
}

/** The corner pressed last, as it stands now; null once its thing is no longer picked or has fewer corners. */
export function cornerInHand(
  state: SelectState,
  { map, selection }: Pick<ToolView, 'map' | 'selection'>,
): Handle | null {
  const corner = state.at === 'rest' ? state.corner : undefined;
  if (!corner) return null;
  return (
    handlesOf(map, selection).find((each) => each.id === corner.id && each.index === corner.index) ?? null
  );
}

/** The corner itself and the handles that bend its edges. */
function gripsOverlay(corner: Handle, view: ToolView): Overlay {
  const grips = corner.kind === 'vertex' ? gripsOf(corner, view) : [];
  return {
    ...emptyOverlay,
    lines: grips.map(({ at }) => ({ points: [corner.at, at], closed: false, style: 'measure' as const })),
    points: [
      { at: corner.at, style: 'snap' as const },
      ...grips.map(({ at }) => ({ at, style: 'grip' as const })),
    ],
  };
}

const gripsOf = (corner: Handle, view: ToolView): readonly CurveGrip[] =>
  corner.kind === 'vertex' ? curveGripsOf(view.map, corner.id as OutlineId, corner.index) : [];

function pressed(state: SelectState, event: PointerInput, view: ToolView): ToolStep<SelectState> {
  const handle = handleAt(cornersToPull(view), event.at, event.reachMm);
  const corner = cornerInHand(state, view);
  const curve = corner ? gripAt(gripsOf(corner, view), event.at, event.reachMm) : null;
  if (curve && (!handle || gapMm(curve.at, event.at) < gapMm(handle.at, event.at))) {
    const grip: Grip = { kind: 'curve', grip: curve, alone: event.alt };
    return stay({ at: 'pressed', from: curve.at, grip, shift: event.shift });
  }
  if (handle && event.alt) {
    const patch = removeCorner(view.map, handle);
    return { state: rest, effects: [{ type: 'edit', label: 'edit.removeCorner', patch }] };
  }
  if (handle) {
    const grip: Grip = { kind: 'handle', handle };
    const oneOf = view.selection.length > 1 && !event.shift ? { oneOf: handle.id } : {};
    return stay({ at: 'pressed', from: handle.at, grip, shift: event.shift, ...oneOf });
  }
  const hit = event.hits[0];
  if (!hit) {
    const effects = event.shift ? [] : [{ type: 'select', ids: [] } as const];
    return { state: { at: 'pressed', from: event.at, grip: null, shift: event.shift }, effects };
  }
  const picked = view.selection.includes(hit.id);
  const grip = gripOn(hit, picked, view.selection);
  const held: SelectState = { at: 'pressed', from: event.at, grip, shift: event.shift };
  if (event.shift) {
    const ids = picked ? view.selection.filter((id) => id !== hit.id) : [...view.selection, hit.id];
    return { state: { ...held, grip: null }, effects: [{ type: 'select', ids }] };
  }
  if (picked && view.selection.length > 1) return stay({ ...held, oneOf: hit.id });
  return picked ? stay(held) : { state: held, effects: [{ type: 'select', ids: [hit.id] }] };
}

/** The corners of what is picked. A rub spot of one point among several picked things moves along with them. */
function cornersToPull({ map, selection }: ToolView): readonly Handle[] {
  const corners = handlesOf(map, selection);
  if (selection.length < 2) return corners;
  return corners.filter(({ kind, id }) => kind !== 'rub-point' || shapeOf(map, id) !== 'point');
}

const shapeOf = (map: MapDocument, id: string) => map.rubSpots.get(id as RubSpotId)?.shape;

function gripAt(grips: readonly CurveGrip[], at: PlanPoint, reachMm: number): CurveGrip | null {
  const near = grips.filter((grip) => gapMm(grip.at, at) <= reachMm);
  return near.sort((a, b) => gapMm(a.at, at) - gapMm(b.at, at))[0] ?? null;
}

const gapMm = (a: PlanPoint, b: PlanPoint): number => Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm);

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
    const to = heldTo(state.grip, state.from, event, view);
    return dragged({ at: 'dragging', from: state.from, to, grip: state.grip }, view);
  }
  if (state.at === 'boxing') return stay({ ...state, to: event.at });
  return dragged({ ...state, to: heldTo(state.grip, state.from, event, view) }, view);
}

/** Where a drag takes what it holds: corners and single nodes take hold of edges and the grid, the rest moves freely. */
function heldTo(grip: Grip, from: PlanPoint, event: PointerInput, view: ToolView): PlanPoint {
  if (grip.kind === 'handle') return snapped(event, view, from, grip.handle.id).at;
  const [only] = grip.kind === 'things' ? grip.ids : [];
  const node = only && grip.kind === 'things' && grip.ids.length === 1 ? nodeOf(view, only) : null;
  if (!node) return event.at;
  // The press may have been a little off the node; what takes hold is the node itself.
  const wanted = {
    xMm: node.at.xMm + event.at.xMm - from.xMm,
    yMm: node.at.yMm + event.at.yMm - from.yMm,
  };
  const { at } = snapped({ ...event, at: wanted }, view, node.at);
  return { xMm: from.xMm + at.xMm - node.at.xMm, yMm: from.yMm + at.yMm - node.at.yMm };
}

const nodeOf = ({ map }: ToolView, id: string) => map.nodes.get(id as NodeId) ?? null;

function dragged(state: Extract<SelectState, { at: 'dragging' }>, view: ToolView): ToolStep<SelectState> {
  const patch = dragPatch(view.map, state.grip, state.from, state.to);
  // Where the thing cannot go it stays at the last place where it could.
  return patch.ok ? { state, effects: [{ type: 'preview', patch: patch.value }] } : stay(state);
}

function letGo(state: SelectState, event: PointerInput, view: ToolView): ToolStep<SelectState> {
  if (state.at === 'dragging') {
    const to = heldTo(state.grip, state.from, event, view);
    const patch = dragPatch(view.map, state.grip, state.from, to);
    return {
      state: atRestWith(state.grip),
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
  if (state.at !== 'pressed') return stay(state);
  const effects = state.oneOf ? [{ type: 'select', ids: [state.oneOf] } as const] : [];
  return { state: atRestWith(state.grip), effects };
}

/** After a corner or one of its handles was held, that corner stays in hand. */
function atRestWith(grip: Grip | null): SelectState {
  if (grip?.kind === 'handle') return { at: 'rest', corner: grip.handle };
  if (grip?.kind !== 'curve') return rest;
  const { outlineId: id, index, at } = grip.grip;
  return { at: 'rest', corner: { id, kind: 'vertex', index, at } };
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
