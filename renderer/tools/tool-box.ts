import type { Overlay } from '../board/overlay.ts';
import { type BesideState, besideTool } from './beside/beside-tool.ts';
import { type ClipAim, clipTool } from './clip/clip-tool.ts';
import { type NodeAim, nodeTool } from './node/node-tool.ts';
import { outlineTool } from './outline/outline-tool.ts';
import { type PaintState, paintTool } from './paint/paint-tool.ts';
import { panelTool } from './panel/panel-tool.ts';
import type { PlacedPoints } from './place-points.ts';
import { type RouteState, routeTool } from './route/route-tool.ts';
import { rubSpotTool } from './rub-spot/rub-spot-tool.ts';
import { type ScalePoints, scaleTool } from './scale/scale-tool.ts';
import { type SelectState, selectTool } from './select/select-tool.ts';
import type { Tool, ToolEffect, ToolEvent, ToolView } from './tool.ts';
import type { ToolName } from './tool-name.ts';
import { type TraceEnds, traceTool } from './trace/trace-tool.ts';
import { underlayTool } from './underlay/underlay-tool.ts';

/** The state of each drawing action, by the action's name. */
interface ToolStates {
  readonly select: SelectState;
  readonly outline: PlacedPoints;
  readonly scale: ScalePoints;
  readonly route: RouteState;
  readonly clip: ClipAim;
  readonly node: NodeAim;
  readonly panel: PlacedPoints;
  readonly 'rub-spot': PlacedPoints;
  readonly trace: TraceEnds;
  readonly underlay: ScalePoints;
  readonly beside: BesideState;
  readonly paint: PaintState;
}

const tools: { readonly [N in ToolName]: Tool<ToolStates[N]> } = {
  select: selectTool,
  outline: outlineTool,
  scale: scaleTool,
  route: routeTool,
  clip: clipTool,
  node: nodeTool,
  panel: panelTool,
  'rub-spot': rubSpotTool,
  trace: traceTool,
  underlay: underlayTool,
  beside: besideTool,
  paint: paintTool,
};

/** The drawing action in hand, with how far it has got. */
export type InHand = {
  readonly [N in ToolName]: { readonly name: N; readonly state: ToolStates[N] };
}[ToolName];

/** Takes up a drawing action afresh. */
export function takeUp<N extends ToolName>(name: N): InHand {
  return { name, state: tools[name].start } as InHand;
}

/** One event through the action in hand. */
export function stepInHand(
  inHand: InHand,
  event: ToolEvent,
  view: ToolView,
): { readonly inHand: InHand; readonly effects: readonly ToolEffect[] } {
  const step = tools[inHand.name].step as Tool<unknown>['step'];
  const { state, effects } = step(inHand.state, event, view);
  return { inHand: { name: inHand.name, state } as InHand, effects };
}

/** What the action in hand shows on the board. */
export function overlayInHand(inHand: InHand, view: ToolView): Overlay {
  return (tools[inHand.name].overlay as Tool<unknown>['overlay'])(inHand.state, view);
}

/** Whether something is begun that Escape would drop. */
export function isUnderWay(inHand: InHand): boolean {
  switch (inHand.name) {
    case 'select':
      return inHand.state.at !== 'rest';
    case 'outline':
    case 'panel':
    case 'rub-spot':
    case 'route':
      return inHand.state.points.length > 0;
    case 'scale':
    case 'underlay':
    case 'trace':
      return inHand.state.from !== null;
    case 'beside':
      return inHand.state.segmentId !== null;
    case 'paint':
      return inHand.state.stretches.length > 0;
    case 'clip':
    case 'node':
      return false;
  }
}
