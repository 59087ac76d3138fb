import type { Job } from '#core/job/job-document.ts';
import { type MapExchange, mapFromExchange } from '#core/map/exchange.ts';
import { type JobId, type MapId, newId } from '#core/quantity/id.ts';
import { fail, ok, type Result } from '#core/quantity/result.ts';
import { addJob, readJob } from '#db/job-store.ts';
import { readMapAt } from '#db/map-history-store.ts';
import { hasPinnedMap, readPinnedMap } from '#db/map-snapshot-store.ts';
import { addMap, mapRevision } from '#db/map-store.ts';
import type { ImportSummary, MapDifference, WhenOther } from '../contract/contract.ts';
import type { HostMeans } from './host-means.ts';
import { jobMisfit } from './job-misfit.ts';
import { otherState, takeTheirs } from './other-state.ts';
import { readDocument } from './read-document.ts';

/** What bringing in a file did, or would do when nothing is stored. */
export interface BroughtIn {
  readonly summary: ImportSummary;
  readonly mapId: MapId | null;
  readonly jobId: JobId | null;
}

/**
 * Brings in a map or a job from a file's text. One that is here already comes in beside it under a new
 * id; records and entries keep theirs, so every reference holds. A map that is here in another state may
 * become one edit of it, or be left out. A job needs its map, at the revision it was opened on, to be here first.
 */
export function bringIn(
  means: HostMeans,
  text: string,
  store: boolean,
  whenOther: WhenOther = 'both',
): Result<BroughtIn> {
  const read = readDocument(text);
  if (!read.ok) return read;
  return read.value.kind === 'map'
    ? bringInMap(means, read.value.map, store, whenOther)
    : bringInJob(means, read.value.job, store);
}

/** What a map's file holds. */
export function mapSummary(
  map: MapExchange,
  alreadyHere: boolean,
  differs: MapDifference | 'same' | null,
): ImportSummary {
  return {
    kind: 'map',
    name: map.details.name,
    segments: map.segments.length,
    panels: map.panels.length,
    circuits: map.circuits.length,
    entries: 0,
    alreadyHere,
    differs: differs === 'same' ? null : differs,
    sameHere: differs === 'same',
  };
}

/**
 * Brings in one map: beside what is here, or where it is here in another state as told. `mapId` is where it is
 * then found; null while nothing is stored.
 */
export function bringInMap(
  means: HostMeans,
  map: MapExchange,
  store: boolean,
  whenOther: WhenOther = 'both',
): Result<BroughtIn> {
  const differs = otherState(means, map);
  const summary = mapSummary(map, isIdTaken(means, map.id), differs);
  if (!store) return ok({ summary, mapId: null, jobId: null });
  if (differs === 'same' || (differs && whenOther === 'ours')) {
    return ok({ summary, mapId: map.id, jobId: null });
  }
  if (differs && whenOther === 'theirs') {
    const taken = takeTheirs(means, map);
    return taken.ok ? ok({ summary, mapId: taken.value, jobId: null }) : taken;
  }
  const beside = bringInBeside(means, map);
  return beside.ok ? ok({ ...beside.value, summary }) : beside;
}

/** Brings in one map beside what is here: under its own id where that is free, else under a new one. */
export function bringInBeside(means: HostMeans, map: MapExchange): Result<BroughtIn> {
  const { connection, now, chance } = means;
  const alreadyHere = isIdTaken(means, map.id);
  const summary = mapSummary(map, alreadyHere, null);
  const kept = addMap(connection, alreadyHere ? { ...map, id: newId('map', chance) } : map, now());
  return kept.ok ? ok({ summary, mapId: kept.value, jobId: null }) : kept;
}

/** A removed map whose jobs are kept still owns its id: they must never meet another drawing. */
const isIdTaken = ({ connection }: HostMeans, mapId: MapId): boolean =>
  mapRevision(connection, mapId) !== null || hasPinnedMap(connection, mapId);

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
    differs: null,
    sameHere: false,
  };
  if (!store) return ok({ summary, mapId: null, jobId: null });
  const kept = addJob(connection, alreadyHere ? { ...job, id: newId('job', chance) } : job, map.value);
  return kept.ok ? ok({ summary, mapId: job.mapId, jobId: kept.value }) : kept;
}
