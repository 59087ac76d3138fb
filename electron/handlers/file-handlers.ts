import { fail, ok } from '#core/quantity/result.ts';
import { readJob } from '#db/job-store.ts';
import { readMap } from '#db/map-store.ts';
import type { Handlers } from '../contract/handlers.ts';
import { bringIn } from './bring-in.ts';
import { bringInBundle } from './bring-in-bundle.ts';
import { handOutBundle } from './hand-out-bundle.ts';
import { jobFile, mapFile } from './handed-out-file.ts';
import type { HostMeans } from './host-means.ts';

type FileHandlers = Pick<
  Handlers,
  'file.bringIn' | 'file.handOut' | 'file.bringInBundle' | 'file.handOutBundle'
>;

/** The requests that read and write files of the exchange format. */
export function fileHandlers(means: HostMeans): FileHandlers {
  return {
    'file.bringIn': ({ text, store, whenOther }) => bringIn(means, text, store, whenOther),

    'file.handOut': (what) => {
      if ('mapId' in what) {
        const map = readMap(means.connection, what.mapId);
        return map ? ok(mapFile(map)) : fail({ code: 'not-found', thing: what.mapId });
      }
      const job = readJob(means.connection, what.jobId);
      return job ? ok(jobFile(job)) : fail({ code: 'not-found', thing: what.jobId });
    },

    'file.bringInBundle': ({ base64, store, whenOther }) =>
      bringInBundle(means, Buffer.from(base64, 'base64'), store, whenOther),

    'file.handOutBundle': (what) => {
      const made = handOutBundle(means, what);
      if (!made.ok) return made;
      const { bytes, ...said } = made.value;
      return ok({ ...said, base64: Buffer.from(bytes).toString('base64') });
    },
  };
}
