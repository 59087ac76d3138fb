import type { BodyPoint } from '#core/geometry/place.ts';
import { pointAtStation } from '#core/geometry/station-line.ts';
import { drawRoute, type RoutePoint } from '#core/map/commands/draw-route.ts';
import type { NodeId } from '#core/quantity/id.ts';
import type { Overlay } from '../../board/overlay.ts';
import { runLine } from '../../board/run-line.ts';
import { drawWords } from '../../language/draw.ts';
import { freeName } from '../free-name.ts';
import { lengthLabel } from '../live-length.ts';
import { snapped } from '../snap.ts';
import { type PointerInput, stay, type Tool, type ToolStep, type ToolView } from '../tool.ts';
import { routeNames } from './route-names.ts';

export interface RouteState {
  readonly points: readonly RoutePoint[];
  readonly pointer: RoutePoint | null;
}

/** Route: press from bend to bend; it takes hold of nodes and of runs, where it makes a branch. */
export const routeTool: Tool<RouteState> = {
  start: { points: [], pointer: null },
  step(state, event, view) {
    if (event.type === 'key') {
      if (event.key === 'Escape') return stay(routeTool.start);
      if (event.key === 'Enter') return laid(state, view);
      return stay({ ...state, points: state.points.slice(0, -1) });
    }
    if (event.type === 'double') return laid(state, view);
    const last = state.points.at(-1);
    const point = routePointAt(view, event, last?.at);
    if (event.type !== 'down') return stay({ ...state, pointer: point });
    // A press on the point just put down is a slow double press, not a bend without length.
    if (last && planGapMm(last.at, point.at) < event.reachMm / 3) return stay(state);
    return stay({ points: [...state.points, point], pointer: point });
  },
  overlay: routeOverlay,
};

/**
 * Where a press would put a point: on a node, on a run, on an edge, on the grid or free; shift keeps a free
 * one to eight directions, alt makes every point a free one.
 */
function routePointAt(view: ToolView, event: PointerInput, last: BodyPoint | undefined): RoutePoint {
  const { map } = view;
  const free = (): RoutePoint => {
    const { at } = snapped(event, view, last);
    return { at: { xMm: at.xMm, yMm: at.yMm, zMm: last?.zMm ?? 0 } };
  };
  if (event.alt) return free();
  const node = event.hits.find((hit) => hit.kind === 'node');
  const known = node && map.nodes.get(node.id as NodeId);
  if (known) return { at: known.at, snap: { nodeId: known.id } };
  const run = event.hits.find((hit) => hit.kind === 'segment');
  const segment = run && map.segments.get(run.id);
  const line = segment && runLine(map, segment);
  if (run && line) {
    const { id: segmentId, stationMm } = run;
    return { at: pointAtStation(line, stationMm), snap: { segmentId, stationMm } };
  }
  return free();
}

const planGapMm = (a: BodyPoint, b: BodyPoint): number => Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm);

function laid(state: RouteState, view: ToolView): ToolStep<RouteState> {
  if (state.points.length < 2) return stay(state);
  const routeName = freeName(drawWords.records.route, routeNames(view.map));
  const patch = drawRoute(
    view.map,
    { routeName, points: state.points, run: { smooth: view.choices.smooth } },
    view.chance,
  );
  const select = patch.ok
    ? patch.value.added
        .filter((record) => 'routeName' in record && record.routeName === routeName)
        .map((record) => record.id)
    : [];
  return {
    // A refused route stays as drawn: nothing is lost, and the last point can be taken back.
    state: patch.ok ? { points: [], pointer: state.pointer } : state,
    effects: [{ type: 'edit', label: 'edit.drawRoute', patch, ...(patch.ok ? { select } : {}) }],
  };
}

function routeOverlay({ points, pointer }: RouteState, view: ToolView): Overlay {
  const placed = points.map((point) => point.at);
  const last = placed.at(-1);
  return {
    lines: [
      ...(placed.length > 1 ? [{ points: placed, closed: false, style: 'firm' as const }] : []),
      ...(last && pointer ? [{ points: [last, pointer.at], closed: false, style: 'loose' as const }] : []),
    ],
    points: [
      ...placed.map((at) => ({ at, style: 'placed' as const })),
      ...(pointer?.snap ? [{ at: pointer.at, style: 'snap' as const }] : []),
    ],
    labels: pointer && last ? lengthLabel([...placed, pointer.at], pointer.at, view.lengths) : [],
    box: null,
  };
}
