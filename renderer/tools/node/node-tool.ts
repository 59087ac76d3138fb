import type { PlanPoint } from '#core/geometry/place.ts';
import { addNode } from '#core/map/commands/add-node.ts';
import { changeNode } from '#core/map/commands/change-node.ts';
import { splitSegment } from '#core/map/commands/split-segment.ts';
import { type NodeId, newId } from '#core/quantity/id.ts';
import { emptyOverlay } from '../../board/overlay.ts';
import { nodeKindWords } from '../../language/words.ts';
import { inTurn } from '../../session/in-turn.ts';
import { freeName } from '../free-name.ts';
import { snapped } from '../snap.ts';
import { type PointerInput, stay, type Tool, type ToolView } from '../tool.ts';

export interface NodeAim {
  readonly aim: PlanPoint | null;
}

/** Plugs, splices and parts: a press on a run sets one into it, on a run's end makes the end one, elsewhere adds one alone, where corners, edges and the grid take hold of it. */
export const nodeTool: Tool<NodeAim> = {
  start: { aim: null },
  step(state, event, view) {
    if (event.type === 'key' || event.type === 'up' || event.type === 'double') return stay(state);
    const target = event.hits.find((hit) => hit.kind === 'node' || hit.kind === 'segment');
    if (event.type === 'move') return stay({ aim: target?.at ?? heldPlace(event, view) });
    const kind = view.choices.nodeKind;
    const name = freeName(nodeKindWords[kind], view.map.nodes.values());
    if (target?.kind === 'node') {
      const nodeId = target.id as NodeId;
      const known = view.map.nodes.get(nodeId);
      // A place that has a name of its own keeps it; one named by us after its old kind does not.
      const ownName = known && !isNumbered(known.name, nodeKindWords[known.kind]) ? known.name : name;
      const patch = changeNode(view.map, { nodeId, changes: { kind, name: ownName } });
      return { state, effects: [{ type: 'edit', label: 'edit.changeNode', patch, select: [nodeId] }] };
    }
    const nodeId = newId('node', view.chance);
    if (target?.kind === 'segment') {
      const segmentId = newId('segment', view.chance);
      const patch = inTurn(
        view.map,
        (map) =>
          splitSegment(map, {
            segmentId: target.id,
            stationMm: target.stationMm,
            ids: { nodeId, segmentId },
          }),
        (map) => changeNode(map, { nodeId, changes: { kind, name } }),
      );
      return { state, effects: [{ type: 'edit', label: 'edit.addNode', patch, select: [nodeId] }] };
    }
    const at = { ...snapped(event, view).at, zMm: 0 };
    const patch = addNode(view.map, { node: { id: nodeId, name, kind, at, panelIds: [], note: '' } });
    return { state, effects: [{ type: 'edit', label: 'edit.addNode', patch, select: [nodeId] }] };
  },
  overlay: ({ aim }) => (aim ? { ...emptyOverlay, points: [{ at: aim, style: 'snap' }] } : emptyOverlay),
};

/** Where a part set down alone would go, shown only where something takes hold of it. */
function heldPlace(event: PointerInput, view: ToolView): PlanPoint | null {
  const { at, on } = snapped(event, view);
  return on ? at : null;
}

const isNumbered = (name: string, base: string): boolean =>
  name === '' || new RegExp(`^${base} \\d+$`).test(name);
