import type { MapDocument } from '#core/map/map-document.ts';
import { idKind } from '#core/quantity/id.ts';
import { nodeKindWords, panelKindWords, rubSpotKindWords } from './words.ts';

/** The user's name of any record of a map; the word for its kind where it has none, its id where it is not there. */
export function nameOf(map: MapDocument, id: string): string {
  switch (idKind(id)) {
    case 'node': {
      const node = map.nodes.get(id as `node:${string}`);
      return node ? node.name || nodeKindWords[node.kind] : id;
    }
    case 'segment': {
      const segment = map.segments.get(id as `segment:${string}`);
      return segment ? segment.name || segment.routeName || 'Run' : id;
    }
    case 'panel': {
      const panel = map.panels.get(id as `panel:${string}`);
      return panel ? panel.name || panelKindWords[panel.kind] : id;
    }
    case 'rub-spot': {
      const spot = map.rubSpots.get(id as `rub-spot:${string}`);
      return spot ? spot.name || rubSpotKindWords[spot.kind] : id;
    }
    case 'circuit':
      return map.circuits.get(id as `circuit:${string}`)?.name ?? id;
    case 'outline':
      return map.outlines.get(id as `outline:${string}`)?.name ?? id;
    case 'underlay':
      return map.underlays.get(id as `underlay:${string}`)?.name || 'Picture';
    default:
      return id;
  }
}
