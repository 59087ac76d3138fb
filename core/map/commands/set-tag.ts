import type { PanelId, SegmentId } from '../../quantity/id.ts';
import { fail, type Result } from '../../quantity/result.ts';
import { findRecord } from '../find-record.ts';
import type { MapDocument } from '../map-document.ts';
import { draftOf } from '../map-draft.ts';
import { erasedTags, paintedTags } from '../panel-tags.ts';
import type { Patch } from '../patch.ts';
import { stationOnRun } from '../station-on-run.ts';

/**
 * Paints a panel over a stretch of a run, or wipes it off there. Painted is confirmed, and joins what it
 * touches; a painted run is no longer one that is in view. The two stations may come in either order.
 * Refuses `not-found`, `zero-length` and `beyond-end`.
 * @example
 * setTag(sample.map, { segmentId: 'segment:rear', panelId: 'panel:seat', fromMm: 300, toMm: 0, over: true }).value.changed[0][1].tags // => [{ panelId: 'panel:seat', fromMm: 0, toMm: 300, confirmed: true }]
 */
export function setTag(
  map: MapDocument,
  input: {
    readonly segmentId: SegmentId;
    readonly panelId: PanelId;
    readonly fromMm: number;
    readonly toMm: number;
    /** True paints the panel over the stretch, false wipes it off. */
    readonly over: boolean;
  },
): Result<Patch> {
  const found = findRecord(map.segments, input.segmentId);
  if (!found.ok) return found;
  if (!map.panels.has(input.panelId)) return fail({ code: 'not-found', thing: input.panelId });
  const segment = found.value;
  const from = stationOnRun(map, segment, Math.min(input.fromMm, input.toMm), 'fromMm');
  if (!from.ok) return from;
  const to = stationOnRun(map, segment, Math.max(input.fromMm, input.toMm), 'toMm');
  if (!to.ok) return to;
  const edit = input.over ? paintedTags : erasedTags;
  const tags = edit(segment.tags, input.panelId, from.value, to.value);
  const { inView, ...rest } = segment;
  const stillInView = inView && !input.over ? { inView } : {};
  const draft = draftOf(map);
  draft.put({ ...rest, ...stillInView, tags });
  return draft.finish();
}
