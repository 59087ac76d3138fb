import type { CircuitLine } from '#core/circuit/circuit-line.ts';
import { type Landmark, nearestLandmark } from '#core/circuit/landmark.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { NodeId } from '#core/quantity/id.ts';
import { type LengthSystem, sayDistance, sayStretch } from './say-length.ts';

const atHandMm = 5;

/** A piece within this of a landmark on both sides is the landmark itself. */
const atPlugMm = 20;

/** A place on the circuit in parts, so that the figures can be set larger than the words. */
export interface SaidPlace {
  /** "0.86 to 1.31", or the one distance of a point; empty where the landmark itself is meant. */
  readonly figures: string;
  readonly unit: string;
  /** "from the Sill plug, towards Rear wiper motor". */
  readonly words: string;
}

/** Where a stretch lies, measured from the nearest thing a hand can find. Stations in mm of wire. */
export function sayWhere(
  map: MapDocument,
  line: CircuitLine,
  fromMm: number,
  toMm: number,
  lengths: LengthSystem,
  say: (name: string) => string = (name) => name,
): SaidPlace {
  const landmark = nearestLandmark(map, line, fromMm, toMm);
  const name = (nodeId: NodeId | undefined): string => {
    const node = nodeId === undefined ? undefined : map.nodes.get(nodeId);
    return say(node?.name || 'unnamed end');
  };
  const first = line.nodes[0]?.nodeId;
  const last = line.nodes.at(-1)?.nodeId;
  const from = name(landmark.nodeId);
  if (landmark.lies === 'across' && landmark.nearMm <= atPlugMm && landmark.farMm <= atPlugMm) {
    return { figures: '', unit: '', words: `at ${from}` };
  }
  if (landmark.lies === 'across') {
    const [near, far] = [sayDistance(landmark.nearMm, lengths), sayDistance(landmark.farMm, lengths)];
    return {
      figures: `${near.value} ${near.unit} before to ${far.value}`,
      unit: far.unit,
      words: `past ${from}, seen from ${name(first)}`,
    };
  }
  const said = sayStretch(landmark.nearMm, landmark.farMm, lengths);
  return {
    figures: landmark.farMm - landmark.nearMm < atHandMm ? said.far : `${said.near} to ${said.far}`,
    unit: said.unit,
    words: `from ${from}${towards(landmark, first, last, name)}`,
  };
}

/** An end of the circuit has only one way to go, so only places between the ends say which way. */
function towards(
  landmark: Landmark,
  first: NodeId | undefined,
  last: NodeId | undefined,
  name: (nodeId: NodeId | undefined) => string,
): string {
  if (landmark.nodeId === first || landmark.nodeId === last) return '';
  return `, towards ${name(landmark.lies === 'towards-first-end' ? first : last)}`;
}

/** The same as one line of text, for reading aloud and for the record. */
export function whereLine(place: SaidPlace): string {
  return [place.figures, place.unit, place.words].filter((part) => part !== '').join(' ');
}
