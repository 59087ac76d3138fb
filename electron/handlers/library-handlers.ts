import { ok } from '#core/quantity/result.ts';
import { listOpenJobs } from '#db/job-list-store.ts';
import { listMaps } from '#db/map-list-store.ts';
import type { Handlers } from '../contract/handlers.ts';
import type { HostMeans } from './host-means.ts';

/** The two lists of the start place: every map, and the jobs that are not closed. */
export function libraryHandlers({ connection }: HostMeans): Pick<Handlers, 'library.list'> {
  return {
    'library.list': () => ok({ maps: listMaps(connection), jobs: listOpenJobs(connection) }),
  };
}
