import type { MapDocument } from '../map/map-document.ts';
import type { Panel } from '../map/records.ts';
import type { JobEntry } from './job-document.ts';
import { panelsOff } from './standing-entries.ts';

/**
 * Panels that are off the car now, in the order in which they go back on: last off, first on.
 * @example
 * panelsToRefit(sample.map, [{ id: 'entry:a', at: '2026-01-05T09:00:00Z', type: 'panel-off', panelId: 'panel:tread' }]).map((panel) => panel.minutesOn) // => [4]
 */
export function panelsToRefit(map: MapDocument, entries: readonly JobEntry[]): readonly Panel[] {
  return [...panelsOff(entries)].flatMap((id) => map.panels.get(id) ?? []).reverse();
}

/**
 * Panels put back on in this job after having been off, each once, in the order they last went on.
 * @example
 * panelsRefitted(sample.map, sample.job.entries) // => []
 */
export function panelsRefitted(map: MapDocument, entries: readonly JobEntry[]): readonly Panel[] {
  const on = new Set<Panel>();
  for (const entry of entries) {
    if (entry.type !== 'panel-off' && entry.type !== 'panel-on') continue;
    const panel = map.panels.get(entry.panelId);
    if (!panel) continue;
    on.delete(panel);
    if (entry.type === 'panel-on') on.add(panel);
  }
  return [...on];
}
