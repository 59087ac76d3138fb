import type { MapDocument } from '#core/map/map-document.ts';

/**
 * What the user calls a thing of the map, by id; the id itself where it has no name or is not there.
 * A run without a name of its own goes by its route.
 */
export function nameOf(map: MapDocument, id: string): string {
  for (const table of [map.nodes, map.panels, map.rubSpots, map.circuits, map.outlines]) {
    const record = (table as ReadonlyMap<string, { readonly name: string }>).get(id);
    if (record) return record.name || id;
  }
  const run = (map.segments as ReadonlyMap<string, { name: string; routeName: string }>).get(id);
  return run?.name || run?.routeName || id;
}

/** The same with the id behind it, for messages that must point into a document. */
export function nameAndId(map: MapDocument | null, id: string): string {
  const name = map ? nameOf(map, id) : id;
  return name === id ? id : `${name} (${id})`;
}
