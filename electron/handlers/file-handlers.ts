import { documentText } from '#core/map/document-text.ts';
import { fail, ok } from '#core/quantity/result.ts';
import { readJob } from '#db/job-store.ts';
import { readMap } from '#db/map-store.ts';
import type { Handlers } from '../contract/handlers.ts';
import { bringIn } from './bring-in.ts';
import type { HostMeans } from './host-means.ts';

/** The requests that read and write files of the exchange format. */
export function fileHandlers(means: HostMeans): Pick<Handlers, 'file.bringIn' | 'file.handOut'> {
  return {
    'file.bringIn': ({ text, store }) => bringIn(means, text, store),

    'file.handOut': (what) => {
      if ('mapId' in what) {
        const map = readMap(means.connection, what.mapId);
        if (!map) return fail({ code: 'not-found', thing: what.mapId });
        return ok({ fileName: `${fileStem(map.details.name)}.map.json`, text: documentText(map) });
      }
      const job = readJob(means.connection, what.jobId);
      if (!job) return fail({ code: 'not-found', thing: what.jobId });
      return ok({ fileName: `${fileStem(job.vehicle.plate)}.job.json`, text: documentText(job) });
    },
  };
}

/** A name as a file name every system takes: small letters, digits and dashes. */
function fileStem(name: string): string {
  const stem = name
    .normalize('NFKD')
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-+|-+$/g, '');
  return stem.slice(0, 60) || 'undertrim';
}
