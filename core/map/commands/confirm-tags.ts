import type { PanelId, SegmentId } from '../../quantity/id.ts';
import { fail, type Result } from '../../quantity/result.ts';
import type { MapDocument } from '../map-document.ts';
import { draftOf } from '../map-draft.ts';
import { mergedTags } from '../panel-tags.ts';
import type { Patch } from '../patch.ts';

/**
 * Confirms proposed tags: all of them, or only those of some runs, or of one panel. Refuses `not-found`.
 * @example
 * confirmTags(sample.map, {}).value // => { added: [], removed: [], changed: [] }
 */
export function confirmTags(
  map: MapDocument,
  input: { readonly segmentIds?: readonly SegmentId[]; readonly panelId?: PanelId },
): Result<Patch> {
  const draft = draftOf(map);
  for (const id of input.segmentIds ?? map.segments.keys()) {
    const segment = map.segments.get(id);
    if (!segment) return fail({ code: 'not-found', thing: id });
    const meant = (panelId: PanelId): boolean => !input.panelId || input.panelId === panelId;
    if (!segment.tags.some((tag) => !tag.confirmed && meant(tag.panelId))) continue;
    const tags = segment.tags.map((tag) => (meant(tag.panelId) ? { ...tag, confirmed: true } : tag));
    draft.put({ ...segment, tags: mergedTags(tags) });
  }
  return draft.finish();
}
