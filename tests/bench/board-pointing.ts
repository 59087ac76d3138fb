import type { MapDocument } from '#core/map/map-document.ts';
import { boardIndex } from '#renderer/board/board-index.ts';
import { hitsAt } from '#renderer/board/hit.ts';
import { type Measured, measure } from './measure.ts';

const reachMm = 40;

/** How fast the board says what lies under the pointer, and how fast it learns of an edit. */
export function boardPointing(map: MapDocument): Measured[] {
  const index = boardIndex(map);
  const places = [...map.nodes.values()].map(({ at }) => at);
  const [first] = map.nodes.values();
  if (!first) throw new Error('a map without nodes');
  return [
    measure('say what lies under the pointer, 5,000 runs', 400, 5, (round) => {
      const at = places[(round + places.length) % places.length];
      if (!at || hitsAt(index, at, reachMm).length === 0) throw new Error('nothing under a node');
    }),
    measure('carry the board index over a moved node', 60, null, (round) => {
      const at = { ...first.at, xMm: first.at.xMm + round };
      boardIndex({ ...map, nodes: new Map(map.nodes).set(first.id, { ...first, at }) }, index);
    }),
  ];
}
