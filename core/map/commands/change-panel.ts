import type { PanelId } from '../../quantity/id.ts';
import { fail, type Result } from '../../quantity/result.ts';
import { findRecord } from '../find-record.ts';
import type { MapDocument } from '../map-document.ts';
import { draftOf } from '../map-draft.ts';
import { offClosure, panelCycle } from '../panel-order.ts';
import type { Patch } from '../patch.ts';
import type { Panel } from '../records.ts';

/**
 * Changes anything about a panel: area, minutes, cautions, what comes off first. Refuses `not-found`,
 * `bad-field`, `missing-reference`, and an order in which the panel would wait for itself (`panel-cycle`).
 * @example
 * changePanel(sample.map, { panelId: 'panel:tread', changes: { offFirst: ['panel:seat'] } }).problem.code // => 'panel-cycle'
 */
export function changePanel(
  map: MapDocument,
  input: { readonly panelId: PanelId; readonly changes: Partial<Omit<Panel, 'id'>> },
): Result<Patch> {
  const found = findRecord(map.panels, input.panelId);
  if (!found.ok) return found;
  const draft = draftOf(map);
  draft.put({ ...found.value, ...input.changes });
  if (input.changes.offFirst) {
    // Only the rings this panel is part of: one elsewhere must not stop its mending.
    const before = offClosure(draft.map.panels, input.changes.offFirst);
    if (before.has(input.panelId)) {
      const among = new Map([...draft.map.panels].filter(([id]) => before.has(id)));
      const panels = panelCycle(among) ?? [input.panelId];
      return fail({ code: 'panel-cycle', panels });
    }
  }
  return draft.finish();
}
