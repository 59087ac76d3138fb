import type { Chance } from '../../quantity/chance.ts';
import { fail, type Result } from '../../quantity/result.ts';
import type { CopiedThings } from '../copied-things.ts';
import type { MapDocument } from '../map-document.ts';
import { draftOf } from '../map-draft.ts';
import { movedBy } from '../moved-record.ts';
import type { Patch } from '../patch.ts';
import { putCopies } from '../put-copies.ts';

/**
 * Pastes copied things, moved in plan, under fresh ids; runs come as unchecked, for nobody has seen them on
 * a car yet. Tags, reach lists and coming-off orders that speak of panels this map does not have are
 * dropped. Refuses an empty copy (`bad-value`) and `bad-field`.
 * @example
 * pasteThings(sample.map, { things: { records: [sample.seat] }, dxMm: 0, dyMm: 500 }, () => 0).value.added[0].offFirst // => ['panel:tread']
 */
export function pasteThings(
  map: MapDocument,
  input: { readonly things: CopiedThings; readonly dxMm: number; readonly dyMm: number },
  chance: Chance,
): Result<Patch> {
  if (input.things.records.length === 0) {
    return fail({ code: 'bad-value', field: 'things', value: 0, allowed: '>= 1' });
  }
  const draft = draftOf(map);
  putCopies(
    draft,
    input.things,
    {
      place: movedBy(input.dxMm, input.dyMm),
      name: (name) => name,
      keepsMention: () => true,
      shares: () => false,
    },
    chance,
  );
  return draft.finish();
}
