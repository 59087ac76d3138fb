import { type Job, jobFormat, jobVersion } from '#core/job/job-document.ts';
import { assert } from '#core/quantity/assert.ts';
import { newId } from '#core/quantity/id.ts';
import { fail, ok } from '#core/quantity/result.ts';
import { addJob, appendEntries, changeIntake, readJob } from '#db/job-store.ts';
import { readPinnedMap } from '#db/map-snapshot-store.ts';
import { readMap } from '#db/map-store.ts';
import type { Handlers } from '../contract/handlers.ts';
import type { HostMeans } from './host-means.ts';

type JobHandlers = Pick<Handlers, 'job.create' | 'job.open' | 'job.append' | 'job.changeIntake'>;

/** The requests about jobs. */
export function jobHandlers({ connection, now, chance }: HostMeans): JobHandlers {
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
      const added = addJob(connection, job, map, openedAt);
      return added.ok ? ok({ jobId: job.id }) : added;
    },

    'job.open': ({ jobId }) => {
      const job = readJob(connection, jobId);
      if (!job) return fail({ code: 'not-found', thing: jobId });
      const map = readPinnedMap(connection, job.mapId, job.mapRevision);
      assert(map, `${jobId} has lost its pinned map`);
      return ok({ job, map });
    },

    'job.append': ({ jobId, expectedEntries, entries }) => {
      const kept = appendEntries(connection, jobId, expectedEntries, entries, now());
      return kept.ok ? ok({ entryCount: kept.value }) : kept;
    },

    'job.changeIntake': ({ jobId, ...intake }) => {
      const kept = changeIntake(connection, jobId, intake, now());
      return kept.ok ? ok({}) : kept;
    },
  };
}
