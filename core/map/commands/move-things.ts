import type { Result } from '../../quantity/result.ts';
import type { MapDocument } from '../map-document.ts';
import { movedThings } from '../moved-things.ts';
import type { Patch } from '../patch.ts';

/**
 * Moves a mixed selection by the same distance in plan: outlines, pictures, nodes, runs (with both their
 * nodes), panel areas and rub spots. A run whose both nodes move goes along whole, so what sits on it
 * keeps its station; a run of which only one end moves is stretched, and clips and tags stay where they
 * physically are. A picked clip slides along its run. Circuits named in the selection have no place of
 * their own. Refuses `not-found` and `bad-field`.
 * @example
 * moveThings(sample.map, { ids: ['panel:seat', 'node:far'], dxMm: 0, dyMm: 50 }).value.changed.map(([, after]) => after.id) // => ['panel:seat', 'node:far']
 */
export function moveThings(
  map: MapDocument,
  input: { readonly ids: readonly string[]; readonly dxMm: number; readonly dyMm: number },
): Result<Patch> {
  const offset = { dxMm: input.dxMm, dyMm: input.dyMm };
  return movedThings(map, new Map(input.ids.map((id) => [id, offset])));
}
