import { jobSchema } from '#core/job/job-document.ts';
import { mapExchangeSchema, mapFromExchange } from '#core/map/exchange.ts';
import { mapFaults } from '#core/map/map-faults.ts';
import type { JobId, MapId } from '#core/quantity/id.ts';
import type { Connection } from '../connection.ts';
import { readJob } from '../job-store.ts';
import { readHistory, readMapAt } from '../map-history-store.ts';
import { readPinnedMap } from '../map-snapshot-store.ts';
import { readMap } from '../map-store.ts';

/** How much of a map or job is there. */
export type Wholeness = 'whole' | 'incomplete' | 'gone';

/**
 * How much of a map is there. It is whole when nothing on it speaks of a thing that is not there; a thing that
 * nothing speaks of can be missing all the same, which only its list of changes could tell.
 */
export function mapWholeness(connection: Connection, mapId: MapId): Wholeness {
  try {
    const map = mapExchangeSchema.safeParse(readMap(connection, mapId));
    if (!map.success) return 'gone';
    return mapFaults(mapFromExchange(map.data)).length === 0 ? 'whole' : 'incomplete';
  } catch {
    return 'gone';
  }
}

/** How much of a job is there: its head, each of its entries, and the map it was opened on. */
export function jobWholeness(connection: Connection, jobId: JobId): Wholeness {
  const job = readJob(connection, jobId);
  if (!job || !jobSchema.safeParse(job).success) return 'gone';
  if (!readPinnedMap(connection, job.mapId, job.mapRevision)) return 'gone';
  const told = connection.prepare('SELECT entry_count FROM job WHERE id = ?').pluck().get(jobId);
  return told === job.entries.length ? 'whole' : 'incomplete';
}

/** Whether a map's changes lead back, one by one, to the state it came in with. */
export function historyHolds(connection: Connection, mapId: MapId): boolean {
  const first = connection.prepare('SELECT first_revision FROM map WHERE id = ?').pluck().get(mapId);
  try {
    readHistory(connection, mapId);
    return readMapAt(connection, mapId, first as number).ok;
  } catch {
    return false;
  }
}
