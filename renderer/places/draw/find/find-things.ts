import type { MapDocument } from '#core/map/map-document.ts';
import { compareText } from '#core/quantity/compare-text.ts';
import { findWords } from '../../../language/draw-find.ts';
import { nameOf } from '../../../language/name-of.ts';
import { plainText } from '../../../language/plain-text.ts';
import {
  circuitDutyWords,
  clipKindWords,
  nodeKindWords,
  outlineKindWords,
  panelKindWords,
  rubSpotKindWords,
} from '../../../language/words.ts';

/** A thing by what it is called and what it is. */
export interface Findable {
  readonly id: string;
  readonly name: string;
  /** Its kind, and where it belongs. */
  readonly fact: string;
  /** Name and fact without accents and case. */
  readonly plain: string;
}

/** Everything on a map that can be found. O(things). */
export function findables(map: MapDocument): readonly Findable[] {
  const all: Findable[] = [];
  const put = (id: string, name: string, ...facts: readonly string[]): void => {
    const fact = facts.filter((each) => each !== '' && each !== name).join(', ');
    all.push({ id, name, fact, plain: plainText(`${name} ${fact}`) });
  };
  const { kinds, on } = findWords;
  for (const segment of map.segments.values()) {
    const ends = `${nameOf(map, segment.fromNodeId)} – ${nameOf(map, segment.toNodeId)}`;
    const name = segment.name || segment.routeName || kinds.segment;
    put(segment.id, name, kinds.segment, segment.name ? segment.routeName : '', ends);
    for (const clip of segment.clips) put(clip.id, clipKindWords[clip.kind], kinds.clip, on(name));
  }
  for (const node of map.nodes.values()) put(node.id, nameOf(map, node.id), nodeKindWords[node.kind]);
  for (const panel of map.panels.values()) {
    put(panel.id, nameOf(map, panel.id), kinds.panel, panelKindWords[panel.kind]);
  }
  for (const spot of map.rubSpots.values()) {
    put(spot.id, nameOf(map, spot.id), kinds['rub-spot'], rubSpotKindWords[spot.kind]);
  }
  for (const circuit of map.circuits.values()) {
    const duty = circuit.duty === 'ordinary' ? '' : circuitDutyWords[circuit.duty];
    put(circuit.id, circuit.name || kinds.circuit, kinds.circuit, circuit.wireColours.join('/'), duty);
  }
  for (const outline of map.outlines.values()) {
    put(outline.id, outline.name || kinds.outline, kinds.outline, outlineKindWords[outline.kind]);
  }
  for (const underlay of map.underlays.values()) put(underlay.id, nameOf(map, underlay.id), kinds.underlay);
  return all;
}

/**
 * Things whose name or kind holds every word typed, best first: the name begins with it, a word of the name
 * does, the name holds it, only the rest does. Nothing typed finds nothing. O(things).
 */
export function findThings(all: readonly Findable[], typed: string): readonly Findable[] {
  const wanted = plainText(typed).trim();
  const parts = wanted.split(/\s+/).filter(Boolean);
  if (parts.length === 0) return [];
  const rank = ({ name }: Findable): number => {
    const plain = plainText(name);
    if (plain.startsWith(wanted)) return 0;
    if (plain.split(/[^\p{L}\p{N}]+/u).some((word) => word.startsWith(wanted))) return 1;
    return plain.includes(wanted) ? 2 : 3;
  };
  return all
    .filter(({ plain }) => parts.every((part) => plain.includes(part)))
    .map((thing) => ({ thing, rank: rank(thing) }))
    .sort(
      (a, b) =>
        a.rank - b.rank || compareText(a.thing.name, b.thing.name) || compareText(a.thing.id, b.thing.id),
    )
    .map(({ thing }) => thing);
}
