import { mirrorThings } from '#core/map/commands/mirror-things.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Patch } from '#core/map/patch.ts';
import type { Result } from '#core/quantity/result.ts';
import { inTurn } from '../session/in-turn.ts';
import type { ToolView } from './tool.ts';

/** What adds a thing, and its twin over the centre line when that is switched on and it lies on one side. */
export function mirroredToo(
  view: ToolView,
  add: (map: MapDocument) => Result<Patch>,
  id: string,
  points: readonly { readonly yMm: number }[],
): Result<Patch> {
  const centre = view.map.details.centreLineYMm;
  const oneSided = points.every(({ yMm }) => yMm >= centre) || points.every(({ yMm }) => yMm <= centre);
  if (!view.choices.mirror || !oneSided) return add(view.map);
  return inTurn(view.map, add, (map) => mirrorThings(map, { ids: [id], how: 'copy' }, view.chance));
}
