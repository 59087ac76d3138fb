import { addOutline } from '#core/map/commands/add-outline.ts';
import { newId } from '#core/quantity/id.ts';
import { outlineKindWords } from '../../language/words.ts';
import { freeName, nextOrder } from '../free-name.ts';
import { noPoints, type PlacedPoints, placedOverlay, placePoints } from '../place-points.ts';
import { stay, type Tool } from '../tool.ts';

/** Outline: corners one by one; on the first one it closes. */
export const outlineTool: Tool<PlacedPoints> = {
  start: noPoints,
  step(state, event, view) {
    const placed = placePoints(state, event);
    if (!placed.finished || placed.points.length < 2) return stay(placed.state);
    const id = newId('outline', view.chance);
    const kind = view.choices.outlineKind;
    const patch = addOutline(view.map, {
      outline: {
        id,
        name: freeName(outlineKindWords[kind], view.map.outlines.values()),
        kind,
        closed: placed.finished === 'closed',
        vertices: placed.points.map(({ xMm, yMm }) => ({ xMm, yMm })),
        order: nextOrder(view.map.outlines.values()),
      },
    });
    return {
      state: placed.state,
      effects: [{ type: 'edit', label: 'edit.addOutline', patch, select: [id] }],
    };
  },
  overlay: (state, view) => placedOverlay(state, false, view),
};
