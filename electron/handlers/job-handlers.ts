import { type Job, jobFormat, jobVersion } from '#core/job/job-document.ts';
import { faultsOfEntries } from '#core/job/job-faults.ts';
import { type MapExchange, mapFromExchange } from '#core/map/exchange.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { assert } from '#core/quantity/assert.ts';
import { newId } from '#core/quantity/id.ts';
import { fail, ok } from '#core/quantity/result.ts';
import { addJob, appendEntries, changeIntake, readJob } from '#db/job-store.ts';
import { readPinnedMap } from '#db/map-snapshot-store.ts';
import { readMap } from '#db/map-store.ts';
import type { Handlers } from '../contract/handlers.ts';
import type { HostMeans } from './host-means.ts';
import { jobMisfit } from './job-misfit.ts';

type JobHandlers = Pick<Handlers, 'job.create' | 'job.open' | 'job.append' | 'job.changeIntake'>;

/** The requests about jobs. */
export function jobHandlers({ connection, now, chance }: HostMeans): JobHandlers {
  const pinnedMap = ({ id, mapId, mapRevision }: Job): MapExchange => {
    const map = readPinnedMap(connection, mapId, mapRevision);
    assert(map, `${id} has lost its pinned map`);
    return map;
  };
  // A pinned map never changes, and work goes on in one job at a time: the last one is worth keeping.
  let last: MapDocument | null = null;
  const pinnedDocument = (job: Job): MapDocument => {
    if (last?.id !== job.mapId || last.revision !== job.mapRevision) last = mapFromExchange(pinnedMap(job));
    return last;
  };

  return {
    'job.create': ({ mapId, ...intake }) => {
      const map = readMap(connection, mapId);
      if (!map) return fail({ code: 'not-found', thing: mapId });
      const openedAt = now();
      const job: Job = {
        format: jobFormat,
        version: jobVersion,
        id: newId('job', chance),
        mapId,
        mapRevision: map.revision,
        openedAt,
        ...intake,
        entries: [],
      };
      const misfit = jobMisfit(mapFromExchange(map), job);
      if (misfit) return fail(misfit);
      const added = addJob(connection, job, map);
      return added.ok ? ok({ jobId: job.id }) : added;
    },

    'job.open': ({ jobId }) => {
      const job = readJob(connection, jobId);
      return job ? ok({ job, map: pinnedMap(job) }) : fail({ code: 'not-found', thing: jobId });
    },

    'job.append': ({ jobId, expectedEntries, entries }) => {
      const job = readJob(connection, jobId);
      if (!job) return fail({ code: 'not-found', thing: jobId });
      const [misfit] = faultsOfEntries(pinnedDocument(job), entries).values();
      if (misfit) return fail(misfit);
      const kept = appendEntries(connection, jobId, expectedEntries, entries, now());
      return kept.ok ? ok({ entryCount: kept.value }) : kept;
    },

    'job.changeIntake': ({ jobId, ...intake }) => {
      const job = readJob(connection, jobId);
      if (!job) return fail({ code: 'not-found', thing: jobId });
      const misfit = jobMisfit(pinnedDocument(job), { ...job, ...intake, entries: [] });
      if (misfit) return fail(misfit);
      const kept = changeIntake(connection, jobId, intake, now());
      return kept.ok ? ok({}) : kept;
    },
  };
}
