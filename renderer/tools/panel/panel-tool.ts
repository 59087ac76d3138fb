import { addPanel } from '#core/map/commands/add-panel.ts';
import type { Panel } from '#core/map/records.ts';
import { newId } from '#core/quantity/id.ts';
import { drawWords } from '../../language/draw.ts';
import { freeName, nextOrder } from '../free-name.ts';
import { mirroredToo } from '../mirrored-too.ts';
import { noPoints, type PlacedPoints, placedOverlay, placePoints } from '../place-points.ts';
import { stay, type Tool } from '../tool.ts';

/** Panel: the corners of the area it covers; everything else about it is entered beside the board. */
export const panelTool: Tool<PlacedPoints> = {
  start: noPoints,
  step(state, event, view) {
    const placed = placePoints(state, event, view);
    if (!placed.finished) return stay(placed.state);
    // Two points are no area yet: keep them rather than losing the work.
    if (placed.points.length < 3) return stay({ ...placed.state, points: placed.points });
    const id = newId('panel', view.chance);
    const panel: Panel = {
      id,
      name: freeName(drawWords.records.panel, view.map.panels.values()),
      kind: 'other',
      area: [...placed.points],
      minutesOff: 0,
      minutesOn: 0,
      offFirst: [],
      cautions: [],
      note: '',
      order: nextOrder(view.map.panels.values()),
    };
    const patch = mirroredToo(view, (map) => addPanel(map, { panel }), id, panel.area);
    return { state: placed.state, effects: [{ type: 'edit', label: 'edit.addPanel', patch, select: [id] }] };
  },
  overlay: (state, view) => placedOverlay(state, true, view),
};
