import { type Bounds, boundsMeet, boundsOf } from '../../geometry/bounds.ts';
import { rangesInside } from '../../geometry/ranges-inside.ts';
import type { PanelId, SegmentId } from '../../quantity/id.ts';
import { fail, type Result } from '../../quantity/result.ts';
import type { MapDocument } from '../map-document.ts';
import { draftOf } from '../map-draft.ts';
import { erasedTags, mergedTags } from '../panel-tags.ts';
import type { Patch } from '../patch.ts';
import type { Panel, PanelTag, Segment } from '../records.ts';
import { segmentLine } from '../segment-line.ts';

/** Overlaps shorter than this are a drawn edge touching a line, not a panel over a loom. */
const touchMm = 5;

/**
 * Proposes which panels hide which runs, from panel areas drawn over them in plan: unconfirmed tags. Old
 * proposals of the same panels give way; confirmed tags stay as they are, and nothing is proposed where
 * the same panel is confirmed already. Without `segmentIds` or `panelIds`, for all. Refuses `not-found`.
 * O(runs x panels) rectangle tests, then only what may overlap.
 * @example
 * proposeTags(sample.map, {}).value // => { added: [], removed: [], changed: [] }
 */
export function proposeTags(
  map: MapDocument,
  input: { readonly segmentIds?: readonly SegmentId[]; readonly panelIds?: readonly PanelId[] },
): Result<Patch> {
  for (const id of [...(input.segmentIds ?? []), ...(input.panelIds ?? [])]) {
    if (!map.segments.has(id as SegmentId) && !map.panels.has(id as PanelId)) {
      return fail({ code: 'not-found', thing: id });
    }
  }
  const panels: { panel: Panel; bounds: Bounds }[] = [];
  for (const id of input.panelIds ?? map.panels.keys()) {
    const panel = map.panels.get(id);
    const bounds = panel && panel.area.length >= 3 ? boundsOf(panel.area) : null;
    if (panel && bounds) panels.push({ panel, bounds });
  }
  const draft = draftOf(map);
  for (const id of input.segmentIds ?? map.segments.keys()) {
    const segment = map.segments.get(id);
    const line = segment && segmentLine(map, segment);
    const lineBounds = line && boundsOf(line.points);
    if (!segment || !line || !lineBounds) continue;
    let tags = segment.tags;
    for (const { panel, bounds } of panels) {
      tags = tags.filter((tag) => tag.confirmed || tag.panelId !== panel.id);
      if (!boundsMeet(bounds, lineBounds)) continue;
      let proposals: PanelTag[] = rangesInside(line, panel.area)
        .filter((range) => range.toMm - range.fromMm >= touchMm)
        .map((range) => ({ panelId: panel.id, ...range, confirmed: false }));
      for (const tag of tags) {
        if (tag.panelId === panel.id) proposals = erasedTags(proposals, panel.id, tag.fromMm, tag.toMm);
      }
      tags = [...tags, ...proposals];
    }
    const merged = mergedTags(tags);
    if (!sameTags(segment, merged)) draft.put({ ...segment, tags: merged });
  }
  return draft.finish();
}

function sameTags(segment: Segment, tags: readonly PanelTag[]): boolean {
  return (
    segment.tags.length === tags.length &&
    segment.tags.every((tag, i) => {
      const other = tags[i];
      return (
        other !== undefined &&
        tag.panelId === other.panelId &&
        tag.fromMm === other.fromMm &&
        tag.toMm === other.toMm &&
        tag.confirmed === other.confirmed
      );
    })
  );
}
