import type { Result } from '../../quantity/result.ts';
import type { MapDocument } from '../map-document.ts';
import { draftOf } from '../map-draft.ts';
import type { Patch } from '../patch.ts';
import { idsLeaving, removeFromDraft } from '../remove-from-draft.ts';

/**
 * Removes a selection of any kinds (clips too) with everything that depends on it; `dependents` tells
 * beforehand what that is. Nothing left behind names what is gone. Refuses `not-found`.
 * @example
 * removeThings(sample.map, { ids: ['node:far'] }).value.removed.map((each) => each.id) // => ['node:far', 'segment:rear']
 */
export function removeThings(map: MapDocument, input: { readonly ids: readonly string[] }): Result<Patch> {
  const leaving = idsLeaving(map, input.ids);
  if (!leaving.ok) return leaving;
  const draft = draftOf(map);
  removeFromDraft(draft, leaving.value);
  return draft.finish();
}
