import type { PlanPoint } from '#core/geometry/place.ts';
import { addRubSpot } from '#core/map/commands/add-rub-spot.ts';
import type { RubSpot } from '#core/map/records.ts';
import { newId } from '#core/quantity/id.ts';
import { rubSpotKindWords } from '../../language/words.ts';
import { freeName } from '../free-name.ts';
import { mirroredToo } from '../mirrored-too.ts';
import { noPoints, type PlacedPoints, placedOverlay, placePoints } from '../place-points.ts';
import { snapped } from '../snap.ts';
import { stay, type Tool, type ToolStep, type ToolView } from '../tool.ts';

const fewest = { point: 1, line: 2, area: 3 } as const;

/** Rub spot: one press for a point, a line of presses, or the corners of an area. */
export const rubSpotTool: Tool<PlacedPoints> = {
  start: noPoints,
  step(state, event, view) {
    const { rubSpotShape } = view.choices;
    if (rubSpotShape === 'point' && event.type === 'down') {
      const { at } = snapped(event, view);
      return added({ points: [], pointer: at, on: null }, [at], view);
    }
    const placed = placePoints(state, event, view);
    if (!placed.finished) return stay(placed.state);
    if (placed.points.length < fewest[rubSpotShape]) return stay({ ...placed.state, points: placed.points });
    return added(placed.state, placed.points, view);
  },
  overlay: (state, view) => placedOverlay(state, view.choices.rubSpotShape === 'area', view),
};

function added(state: PlacedPoints, points: readonly PlanPoint[], view: ToolView): ToolStep<PlacedPoints> {
  const id = newId('rub-spot', view.chance);
  const { rubSpotKind, rubSpotShape } = view.choices;
  const rubSpot: RubSpot = {
    id,
    name: freeName(rubSpotKindWords[rubSpotKind], view.map.rubSpots.values()),
    kind: rubSpotKind,
    shape: rubSpotShape,
    points: points.map(({ xMm, yMm }) => ({ xMm, yMm, zMm: 0 })),
    clearanceMm: null,
    side: 'level',
    severity: 2,
    timesFound: 0,
    note: '',
  };
  const patch = mirroredToo(view, (map) => addRubSpot(map, { rubSpot }), id, points);
  return { state, effects: [{ type: 'edit', label: 'edit.addRubSpot', patch, select: [id] }] };
}
