import { fail } from '#core/quantity/result.ts';
import type { Handlers } from '../contract/handlers.ts';
import { backupHandlers } from './backup-handlers.ts';
import { fileHandlers } from './file-handlers.ts';
import type { HostMeans } from './host-means.ts';
import { jobHandlers } from './job-handlers.ts';
import { libraryHandlers } from './library-handlers.ts';
import { mapHandlers } from './map-handlers.ts';
import { pastHandlers } from './past-handlers.ts';
import { pictureHandlers } from './picture-handlers.ts';
import { placeHandlers } from './place-handlers.ts';

/** Every request of the contract, answered over one store. Written once; each host only carries them. */
export function handlersOver(means: HostMeans): Handlers {
  return {
    ...libraryHandlers(means),
    ...mapHandlers(means),
    ...jobHandlers(means),
    ...fileHandlers(means),
    ...pastHandlers(means),
    ...pictureHandlers(means),
    ...placeHandlers(means),
    ...backupHandlers(means),
    'page.print': () => fail({ code: 'unknown-request', name: 'page.print' }),
  };
}
