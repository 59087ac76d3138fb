import type { Job } from '#core/job/job-document.ts';
import { type MapExchange, mapFromExchange } from '#core/map/exchange.ts';
import { type JobId, type MapId, newId } from '#core/quantity/id.ts';
import { fail, ok, type Result } from '#core/quantity/result.ts';
import { addJob, readJob } from '#db/job-store.ts';
import { readMapAt } from '#db/map-history-store.ts';
import { hasPinnedMap, readPinnedMap } from '#db/map-snapshot-store.ts';
import { addMap, mapRevision } from '#db/map-store.ts';
import type { ImportSummary } from '../contract/contract.ts';
import type { HostMeans } from './host-means.ts';
import { jobMisfit } from './job-misfit.ts';
import { readDocument } from './read-document.ts';

/** What bringing in a file did, or would do when nothing is stored. */
export interface BroughtIn {
  readonly summary: ImportSummary;
  readonly mapId: MapId | null;
  readonly jobId: JobId | null;
}

/**
 * Brings in a map or a job from a file's text. One that is here already comes in beside it under a new
 * id; records and entries keep theirs, so every reference holds. A job needs its map, at the revision it
 * was opened on, to be here first.
 */
export function bringIn(means: HostMeans, text: string, store: boolean): Result<BroughtIn> {
  const read = readDocument(text);
  if (!read.ok) return read;
  return read.value.kind === 'map'
    ? bringInMap(means, read.value.map, store)
    : bringInJob(means, read.value.job, store);
}

/** What a map's file holds. */
export function mapSummary(map: MapExchange, alreadyHere: boolean): ImportSummary {
  return {
    kind: 'map',
    name: map.details.name,
    segments: map.segments.length,
    panels: map.panels.length,
    circuits: map.circuits.length,
    entries: 0,
    alreadyHere,
  };
}

/** Brings in one map, beside what is here. */
export function bringInMap(
  { connection, now, chance }: HostMeans,
  map: MapExchange,
  store: boolean,
): Result<BroughtIn> {
  // A removed map whose jobs are kept still owns its id: they must never meet another drawing.
  const alreadyHere = mapRevision(connection, map.id) !== null || hasPinnedMap(connection, map.id);
  const summary = mapSummary(map, alreadyHere);
  if (!store) return ok({ summary, mapId: null, jobId: null });
  const kept = addMap(connection, alreadyHere ? { ...map, id: newId('map', chance) } : map, now());
  return kept.ok ? ok({ summary, mapId: kept.value, jobId: null }) : kept;
}

/** Brings in one job whose map is here at the revision it was opened on; else `not-found` or `stale-revision`. */
export function bringInJob({ connection, chance }: HostMeans, job: Job, store: boolean): Result<BroughtIn> {
  const pinned = readPinnedMap(connection, job.mapId, job.mapRevision);
  const map: Result<MapExchange> = pinned ? ok(pinned) : readMapAt(connection, job.mapId, job.mapRevision);
  if (!map.ok) return map;
  const misfit = jobMisfit(mapFromExchange(map.value), job);
  if (misfit) return fail(misfit);
  const alreadyHere = readJob(connection, job.id) !== null;
  const summary: ImportSummary = {
    kind: 'job',
    name: job.vehicle.plate,
    segments: 0,
    panels: 0,
    circuits: 0,
    entries: job.entries.length,
    alreadyHere,
  };
  if (!store) return ok({ summary, mapId: null, jobId: null });
  const kept = addJob(connection, alreadyHere ? { ...job, id: newId('job', chance) } : job, map.value);
  return kept.ok ? ok({ summary, mapId: job.mapId, jobId: kept.value }) : kept;
}
