import { addOutline } from '#core/map/commands/add-outline.ts';
import { mirrorOutline } from '#core/map/commands/mirror-outline.ts';
import type { Outline } from '#core/map/records.ts';
import { newId } from '#core/quantity/id.ts';
import { samePlaceMm } from '#core/quantity/tolerance.ts';
import { outlineKindWords } from '../../language/words.ts';
import { inTurn } from '../../session/in-turn.ts';
import { freeName, nextOrder } from '../free-name.ts';
import { mirroredToo } from '../mirrored-too.ts';
import { noPoints, type PlacedPoints, placedOverlay, placePoints } from '../place-points.ts';
import { stay, type Tool, type ToolView } from '../tool.ts';

/** Outline: corners one by one; on the first one it closes. Mirrored, a half from and to the centre line becomes whole. */
export const outlineTool: Tool<PlacedPoints> = {
  start: noPoints,
  step(state, event, view) {
    const placed = placePoints(state, event, view);
    if (!placed.finished || placed.points.length < 2) return stay(placed.state);
    const kind = view.choices.outlineKind;
    const outline: Outline = {
      id: newId('outline', view.chance),
      name: freeName(outlineKindWords[kind], view.map.outlines.values()),
      kind,
      closed: placed.finished === 'closed',
      vertices: placed.points.map(({ xMm, yMm }) => ({ xMm, yMm })),
      order: nextOrder(view.map.outlines.values()),
    };
    const patch = isHalf(outline, view)
      ? inTurn(
          view.map,
          (map) => addOutline(map, { outline }),
          (map) => mirrorOutline(map, { outlineId: outline.id, how: 'complete' }),
        )
      : mirroredToo(view, (map) => addOutline(map, { outline }), outline.id, outline.vertices);
    return {
      state: placed.state,
      effects: [{ type: 'edit', label: 'edit.addOutline', patch, select: [outline.id] }],
    };
  },
  overlay: (state, view) => placedOverlay(state, false, view),
};

/** Whether an outline runs open from the centre line back to it, so that its twin makes it whole. */
function isHalf({ vertices, closed }: Outline, { map, choices }: ToolView): boolean {
  const ends = [vertices[0], vertices.at(-1)];
  return (
    choices.mirror &&
    !closed &&
    vertices.length >= 3 &&
    ends.every((end) => end && Math.abs(end.yMm - map.details.centreLineYMm) < samePlaceMm)
  );
}
