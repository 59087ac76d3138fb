import type { MapDocument } from '#core/map/map-document.ts';

/** A map whose names are said as the user wants sides said, for drawing only. Unchanged records stay themselves. */
export function saidMap(map: MapDocument, say: (name: string) => string): MapDocument {
  const said = <K extends string, T extends { readonly name: string }>(
    table: ReadonlyMap<K, T>,
  ): ReadonlyMap<K, T> => {
    let changed = false;
    const next = new Map<K, T>();
    for (const [id, record] of table) {
      const name = say(record.name);
      changed ||= name !== record.name;
      next.set(id, name === record.name ? record : { ...record, name });
    }
    return changed ? next : table;
  };
  return { ...map, nodes: said(map.nodes), panels: said(map.panels), rubSpots: said(map.rubSpots) };
}
