import { ok } from '#core/quantity/result.ts';
import { keepPlace, readPlace } from '#db/place-store.ts';
import type { Handlers } from '../contract/handlers.ts';
import type { HostMeans } from './host-means.ts';

/** The requests about what each place of the screen keeps for itself. */
export function placeHandlers({ connection }: HostMeans): Pick<Handlers, 'place.read' | 'place.keep'> {
  return {
    'place.read': ({ key }) => ok({ text: readPlace(connection, key) }),
    'place.keep': ({ key, text }) => {
      keepPlace(connection, key, text);
      return ok({});
    },
  };
}
