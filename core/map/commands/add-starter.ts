import type { Chance } from '../../quantity/chance.ts';
import { fail, type Result } from '../../quantity/result.ts';
import type { StarterStyle } from '../body-proportions.ts';
import { type BodySize, bodyStarter } from '../body-starters.ts';
import type { MapDocument } from '../map-document.ts';
import { draftOf } from '../map-draft.ts';
import { movedBy } from '../moved-record.ts';
import { nextOrder } from '../next-order.ts';
import type { Patch } from '../patch.ts';

/**
 * Draws the outlines of a body style, stretched to the measured car, on the map's centre line with the
 * front bumper at `frontXMm`. Refuses (`bad-value`) a size that is not above zero and a wheelbase not
 * shorter than the car, and `bad-field`.
 * @example
 * addStarter(sample.map, { style: 'van', size: { lengthMm: 5300, widthMm: 1990, wheelbaseMm: 3300 } }, seededChance(1)).value.added[0].name // => 'Body shell'
 */
export function addStarter(
  map: MapDocument,
  input: { readonly style: StarterStyle; readonly size: BodySize; readonly frontXMm?: number },
  chance: Chance,
): Result<Patch> {
  for (const [field, value] of Object.entries(input.size)) {
    if (!(value > 0)) return fail({ code: 'bad-value', field, value, allowed: '> 0' });
  }
  const { lengthMm, wheelbaseMm } = input.size;
  if (wheelbaseMm >= lengthMm) {
    return fail({ code: 'bad-value', field: 'wheelbaseMm', value: wheelbaseMm, allowed: `< ${lengthMm}` });
  }
  const { vertex } = movedBy(input.frontXMm ?? 0, map.details.centreLineYMm);
  const draft = draftOf(map);
  let order = nextOrder(map.outlines);
  for (const sketch of bodyStarter(input.style, input.size)) {
    const vertices = sketch.vertices.map(vertex);
    draft.put({ ...sketch, vertices, id: draft.freshId('outline', chance), order: order++ });
  }
  return draft.finish();
}
