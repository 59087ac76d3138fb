import { historyJob, jobOnMap } from '#core/job/history-job.ts';
import type { Job } from '#core/job/job-document.ts';
import { type MapExchange, mapFromExchange } from '#core/map/exchange.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { compareText } from '#core/quantity/compare-text.ts';
import type { MapId } from '#core/quantity/id.ts';
import { ok, type Result } from '#core/quantity/result.ts';
import { closedJobsOf } from '#db/job-list-store.ts';
import { addJob, readJob } from '#db/job-store.ts';
import { readPinnedMap } from '#db/map-snapshot-store.ts';
import { readMap } from '#db/map-store.ts';
import type { HistorySummary } from '../contract/contract.ts';
import type { HostMeans } from './host-means.ts';

/** Past jobs to hand out, all on the map as it is now, and how many speak of places it no longer has. */
export interface HistoryOut {
  readonly jobs: readonly Job[];
  readonly leftOut: number;
}

/** The closed jobs of a map without their customers, each moved onto the map as it is now. */
export function historyOf({ connection }: HostMeans, map: MapExchange): HistoryOut {
  const now = mapFromExchange(map);
  const jobs: Job[] = [];
  let leftOut = 0;
  for (const id of closedJobsOf(connection, map.id)) {
    const job = readJob(connection, id);
    const past = job && historyJob(job);
    const pinned = past && readPinnedMap(connection, past.mapId, past.mapRevision);
    if (!past || !pinned) continue;
    const moved = jobOnMap(past, mapFromExchange(pinned), now);
    if (moved) jobs.push(moved);
    else leftOut += 1;
  }
  return { jobs: jobs.sort((a, b) => compareText(a.id, b.id)), leftOut };
}

/**
 * Adds another workshop's past jobs to what is known here. One that is here already stays as it is, whichever way
 * it came; the others go to one's own drawing of the model where each place is still the same on it, else to
 * the drawing they came with. `broughtAs` is the id under which that one is kept here.
 */
export function mergeHistory(
  { connection }: HostMeans,
  jobs: readonly Job[],
  maps: readonly { readonly map: MapExchange; readonly broughtAs: MapId }[],
): Result<HistorySummary> {
  const summary = { newJobs: 0, knownJobs: 0, onOwnMap: 0, leftOut: 0 };
  const own = new Map<MapId, MapExchange | null>();
  const kept = new Map<MapId, MapDocument>();
  for (const job of jobs) {
    if (readJob(connection, job.id)) {
      summary.knownJobs += 1;
      continue;
    }
    const origin = maps.find(({ map }) => map.id === job.mapId && map.revision === job.mapRevision);
    if (!origin) {
      summary.leftOut += 1;
      continue;
    }
    const from = kept.get(job.mapId) ?? mapFromExchange(origin.map);
    kept.set(job.mapId, from);
    if (!own.has(job.mapId)) own.set(job.mapId, readMap(connection, job.mapId));
    const ours = own.get(job.mapId) ?? null;
    const theirs = readMap(connection, origin.broughtAs);
    const onOurs = ours && jobOnMap(job, from, mapFromExchange(ours));
    const placed = onOurs ?? (theirs && jobOnMap(job, from, mapFromExchange(theirs)));
    const map = onOurs ? ours : theirs;
    if (!placed || !map) {
      summary.leftOut += 1;
      continue;
    }
    const added = addJob(connection, placed, map);
    if (!added.ok) return added;
    summary.newJobs += 1;
    if (onOurs) summary.onOwnMap += 1;
  }
  return ok(summary);
}
