import { ok } from '#core/quantity/result.ts';
import { listJobs } from '#db/job-list-store.ts';
import { listMaps } from '#db/map-list-store.ts';
import type { Handlers } from '../contract/handlers.ts';
import type { HostMeans } from './host-means.ts';

/** The two lists of the start place. */
export function libraryHandlers({ connection }: HostMeans): Pick<Handlers, 'library.list'> {
  return {
    'library.list': () => ok({ maps: listMaps(connection), jobs: listJobs(connection) }),
  };
}
