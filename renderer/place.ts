import type { JobId, MapId } from '#core/quantity/id.ts';
import { type ClosePage, closeHash, closePages } from './places/close/close-page.ts';

/** Where the user is; kept in the address so that reloading and going back work. */
export type Place =
  | { readonly at: 'start' }
  | { readonly at: 'draw'; readonly mapId: MapId }
  | { readonly at: 'find'; readonly jobId: JobId }
  | { readonly at: 'close'; readonly jobId: JobId; readonly page: ClosePage }
  | { readonly at: 'model'; readonly mapId: MapId };

/** The place an address names; anything else is the start. */
export function placeOf(hash: string): Place {
  const [, closing, sheet] = /^#\/close\/([^/]+)(?:\/([a-z-]+))?$/.exec(hash) ?? [];
  if (closing) {
    const page = closePages.find((each) => each === sheet) ?? 'work';
    return { at: 'close', jobId: closing as JobId, page };
  }
  const [, at, id] = /^#\/(map|job|model)\/(.+)$/.exec(hash) ?? [];
  if (at === 'model' && id) return { at: 'model', mapId: id as MapId };
  if (at === 'map' && id) return { at: 'draw', mapId: id as MapId };
  if (at === 'job' && id) return { at: 'find', jobId: id as JobId };
  return { at: 'start' };
}

/** The address of a place. */
export function hashOf(place: Place): string {
  if (place.at === 'draw') return `#/map/${place.mapId}`;
  if (place.at === 'find') return `#/job/${place.jobId}`;
  if (place.at === 'close') return closeHash(place.jobId, place.page);
  if (place.at === 'model') return `#/model/${place.mapId}`;
  return '#/';
}
