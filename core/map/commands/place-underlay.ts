import type { PlanPoint } from '../../geometry/place.ts';
import type { UnderlayId } from '../../quantity/id.ts';
import type { Result } from '../../quantity/result.ts';
import type { MapDocument } from '../map-document.ts';
import type { Patch } from '../patch.ts';
import { type PicturePoint, placeByTwoPoints } from '../underlay-place.ts';
import { changeUnderlay } from './change-underlay.ts';

/**
 * Lays a picture so that two points picked in it come to lie on the two places they are known to be, such
 * as both wheel centres. Refuses `not-found`, `same-point`, and a scale no map holds (`bad-field`).
 * @example
 * placeUnderlay(sample.map, { underlayId: 'underlay:none', picture: [{ uPx: 0, vPx: 0 }, { uPx: 9, vPx: 0 }], body: [{ xMm: 0, yMm: 0 }, { xMm: 9, yMm: 0 }] }).problem.code // => 'not-found'
 */
export function placeUnderlay(
  map: MapDocument,
  input: {
    readonly underlayId: UnderlayId;
    readonly picture: readonly [PicturePoint, PicturePoint];
    readonly body: readonly [PlanPoint, PlanPoint];
  },
): Result<Patch> {
  const place = placeByTwoPoints(input.picture, input.body);
  if (!place.ok) return place;
  return changeUnderlay(map, { underlayId: input.underlayId, changes: place.value });
}
