import type { EntryId, PanelId } from '../quantity/id.ts';
import type { Job, JobEntry } from './job-document.ts';
import { putRight } from './put-right.ts';

/**
 * The entries that still stand: what was taken back is left out, and a take-back that was itself
 * taken back no longer counts. Later entries decide about earlier ones. What was put right stands where the
 * first of it stood, so that what came after it still does. O(entries).
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
  standing.reverse();
  const firsts = putRight(job);
  if (firsts.size === 0) return standing;
  const places = new Map(job.entries.map(({ id }, place) => [id, place]));
  const placeOf = ({ id }: JobEntry): number => places.get(firsts.get(id)?.id ?? id) as number;
  return standing.sort((a, b) => placeOf(a) - placeOf(b));
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
