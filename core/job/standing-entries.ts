import type { EntryId, PanelId } from '../quantity/id.ts';
import type { Job, JobEntry } from './job-document.ts';

/**
 * The entries that still stand: what was taken back is left out, and a take-back that was itself
 * taken back no longer counts. Later entries decide about earlier ones. O(entries).
 * @example
 * standingEntries(sample.job).length // => 0
 */
export function standingEntries(job: Job): readonly JobEntry[] {
  const gone = new Set<EntryId>();
  const standing: JobEntry[] = [];
  for (let i = job.entries.length - 1; i >= 0; i--) {
    const entry = job.entries[i] as JobEntry;
    if (gone.has(entry.id)) continue;
    if (entry.type === 'take-back') gone.add(entry.entryId);
    else standing.push(entry);
  }
  return standing.reverse();
}

/**
 * Panels that are off the car now.
 * @example
 * [...panelsOff(standingEntries(sample.job))] // => []
 */
export function panelsOff(entries: readonly JobEntry[]): ReadonlySet<PanelId> {
  const off = new Set<PanelId>();
  for (const entry of entries) {
    if (entry.type === 'panel-off') off.add(entry.panelId);
    if (entry.type === 'panel-on') off.delete(entry.panelId);
  }
  return off;
}
