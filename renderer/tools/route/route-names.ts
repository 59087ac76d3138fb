import type { MapDocument } from '#core/map/map-document.ts';

/** Names of the routes there are, once for each run. */
export function* routeNames(map: MapDocument): Generator<{ readonly name: string }> {
  for (const segment of map.segments.values()) yield { name: segment.routeName };
}
