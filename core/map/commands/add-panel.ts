import { fail, type Result } from '../../quantity/result.ts';
import { addRecord } from '../add-record.ts';
import type { MapDocument } from '../map-document.ts';
import type { Patch } from '../patch.ts';
import type { Panel } from '../records.ts';

/**
 * Adds a panel. Refuses `duplicate-id`, `bad-field`, `missing-reference` for a panel that should come off
 * before it, and one that waits for itself (`panel-cycle`).
 * @example
 * addPanel(sample.map, { panel: { ...sample.seat, id: 'panel:rear-seat', offFirst: ['panel:rear-seat'] } }).problem // => { code: 'panel-cycle', panels: ['panel:rear-seat'] }
 */
export function addPanel(map: MapDocument, input: { readonly panel: Panel }): Result<Patch> {
  const { panel } = input;
  if (panel.offFirst.includes(panel.id)) return fail({ code: 'panel-cycle', panels: [panel.id] });
  return addRecord(map, panel);
}
