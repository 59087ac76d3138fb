import type { MapDocument } from '../map/map-document.ts';
import type { CircuitEnd } from '../map/records.ts';
import { compareText } from '../quantity/compare-text.ts';
import type { CircuitId, NodeId } from '../quantity/id.ts';
import { conductorOhmsPerMetre } from '../wire/conductor-resistance.ts';
import type { CircuitLine, PassedNode } from './circuit-line.ts';
import { type LengthPieces, lengthPieces } from './length-pieces.ts';

/** Contact resistance of one inline plug pin when nobody measured it: judgement, 5 to 20 milliohm is usual. */
export const plugContactOhms = 0.005;

/** What is known of the wire besides the map. */
export interface WireKnowledge {
  /** Instead of the conductor table's maximum; then taken as measured. */
  readonly ohmsPerMetre?: number | undefined;
  /** Temperature of the wire where nothing else is said; 20 when absent. */
  readonly celsius?: number | undefined;
  /** Stretches of the circuit, by its own stations, that are warmer or colder. */
  readonly warmStretches?:
    | readonly { readonly fromMm: number; readonly toMm: number; readonly celsius: number }[]
    | undefined;
  /** Contact resistance of plugs somebody measured. */
  readonly measuredPlugs?: ReadonlyMap<NodeId, number> | undefined;
}

/** One rung: wire between two points where something can be tied or parted, a plug's contact, or none at all between two rows of wire. */
export interface LadderLink {
  readonly kind: 'wire' | 'plug' | 'gap';
  /** The plug's node. */
  readonly nodeId: NodeId | null;
  readonly fromMm: number;
  readonly toMm: number;
  readonly ohms: number;
}

/** Points on the first-end and second-end side of nodes that have points of their own. */
export type LadderPoints = ReadonlyMap<NodeId, { readonly firstEnd: number; readonly secondEnd: number }>;

/** A branch's row of links on the ladder, and the point it is spliced to. */
export interface LadderBranch {
  readonly circuitId: CircuitId;
  readonly firstPoint: number;
  readonly lastPoint: number;
  readonly joinPoint: number;
  readonly pointsAt: LadderPoints;
  /** What sits at its far end; null where that is a splice again. */
  readonly end: CircuitEnd | null;
}

/**
 * A traced circuit as a row of links; link i joins points i and i + 1. Branches follow, each behind a gap,
 * their first points spliced to points before.
 */
export interface WireLadder {
  readonly lengthMm: number;
  readonly links: readonly LadderLink[];
  readonly pointCount: number;
  /** Of the circuit itself. */
  readonly pointsAt: LadderPoints;
  /** The circuit's own last point. */
  readonly lastPoint: number;
  readonly branches: readonly LadderBranch[];
  /** Plugs in an order that does not depend on which end the circuit was traced from. */
  readonly plugIds: readonly NodeId[];
  /** Wire ohms from the first end, straight between the stations given. */
  readonly profileMm: Float64Array;
  readonly profileOhms: Float64Array;
  readonly pieces: LengthPieces;
}

/**
 * Lays a traced circuit out as links: wire between the ends, the inline plugs passed and the nodes in
 * `accessNodeIds` (where leads sat). Wire is counted at the conductor table's maximum at its
 * temperature, plugs at what was measured or 5 milliohm. O(nodes log nodes).
 * @example
 * layLadder(sample.map, sample.line, []).links.map((link) => link.ohms) // => [0.0272, 0.005, 0.0544]
 */
export function layLadder(
  map: MapDocument,
  line: CircuitLine,
  accessNodeIds: readonly NodeId[],
  knowledge: WireKnowledge = {},
): WireLadder {
  const pieces = lengthPieces(line);
  const { profileMm, profileOhms } = ohmsProfile(line, knowledge, pieces.edgesMm);
  const access = new Set([...accessNodeIds, ...line.branches.map(({ joinNodeId }) => joinNodeId)]);
  const joints = new Set(line.branches.map(({ joinNodeId }) => joinNodeId));
  const links: LadderLink[] = [];
  const layRow = (nodes: readonly PassedNode[]): LadderPoints => {
    const pointsAt = new Map<NodeId, { firstEnd: number; secondEnd: number }>();
    const last = nodes.length - 1;
    let lastMm = nodes[0]?.stationMm ?? 0;
    const layWire = (toMm: number): void => {
      if (toMm <= lastMm) return;
      const ohms = ohmsAt(profileMm, profileOhms, toMm) - ohmsAt(profileMm, profileOhms, lastMm);
      links.push({ kind: 'wire', nodeId: null, fromMm: lastMm, toMm, ohms });
      lastMm = toMm;
    };
    nodes.forEach(({ nodeId, stationMm }, i) => {
      const isPlug = i > 0 && i < last && map.nodes.get(nodeId)?.kind === 'inline-connector';
      if (i > 0 && i < last && !isPlug && !access.has(nodeId)) return;
      layWire(stationMm);
      const firstEnd = links.length;
      if (isPlug) {
        const ohms = knowledge.measuredPlugs?.get(nodeId) ?? plugContactOhms;
        links.push({ kind: 'plug', nodeId, fromMm: stationMm, toMm: stationMm, ohms });
      }
      if (!pointsAt.has(nodeId)) pointsAt.set(nodeId, { firstEnd, secondEnd: links.length });
    });
    return pointsAt;
  };
  const pointsAt = layRow(line.nodes);
  const lastPoint = links.length;
  const rows = [pointsAt];
  const branches = line.branches.map((branch): LadderBranch => {
    const { fromMm, joinNodeId, circuit, end } = branch;
    links.push({ kind: 'gap', nodeId: null, fromMm, toMm: fromMm, ohms: 0 });
    const firstPoint = links.length;
    const row = layRow(branch.nodes);
    rows.push(row);
    return {
      circuitId: circuit.id,
      firstPoint,
      lastPoint: links.length,
      joinPoint: rows[branch.parent + 1]?.get(joinNodeId)?.firstEnd ?? 0,
      pointsAt: row,
      end: end.nodeId !== null && joints.has(end.nodeId) ? null : end,
    };
  });
  const plugIds = [...new Set(links.flatMap((link) => link.nodeId ?? []))].sort(compareText);
  return {
    lengthMm: line.lengthMm,
    links,
    pointCount: links.length + 1,
    pointsAt,
    lastPoint,
    branches,
    plugIds,
    profileMm,
    profileOhms,
    pieces,
  };
}

/**
 * The same ladder with each of its pieces of wire longer or shorter than drawn by a factor, in the order
 * that does not depend on which end the circuit was traced from. O(links + pieces).
 * @example
 * stretchedLadder(layLadder(sample.map, sample.line, []), [1, 2]).profileOhms // => Float64Array.of(0, 0.0816, 0.1224)
 */
export function stretchedLadder(ladder: WireLadder, scales: readonly number[]): WireLadder {
  const { pieces, profileMm } = ladder;
  const count = pieces.spread.length;
  const profileOhms = new Float64Array(profileMm.length);
  let piece = 0;
  for (let i = 1; i < profileMm.length; i++) {
    const middle = ((profileMm[i - 1] as number) + (profileMm[i] as number)) / 2;
    while (piece < count - 1 && (pieces.edgesMm[piece + 1] as number) < middle) piece++;
    const scale = scales[pieces.isTurned ? count - 1 - piece : piece] ?? 1;
    const ohms = (ladder.profileOhms[i] as number) - (ladder.profileOhms[i - 1] as number);
    profileOhms[i] = (profileOhms[i - 1] as number) + scale * ohms;
  }
  const links = ladder.links.map((link) =>
    link.kind === 'wire'
      ? {
          ...link,
          ohms: ohmsAt(profileMm, profileOhms, link.toMm) - ohmsAt(profileMm, profileOhms, link.fromMm),
        }
      : link,
  );
  return { ...ladder, links, profileOhms };
}

/**
 * Wire ohms between the first end and a station, without plugs.
 * @example
 * wireOhmsTo(layLadder(sample.map, sample.line, []), 1000) // => 0.0544
 */
export function wireOhmsTo(ladder: WireLadder, stationMm: number): number {
  return ohmsAt(ladder.profileMm, ladder.profileOhms, stationMm);
}

/** For each station, the wire link that holds it and the share of that link's ohms before it. */
export interface LadderPlaces {
  readonly link: Int32Array;
  readonly share: Float64Array;
}

/**
 * Finds stations on the ladder. A station at a plug counts as the wire before it. O(stations log links).
 * @example
 * placesOnLadder(layLadder(sample.map, sample.line, []), [250, 1000]) // => { link: Int32Array.of(0, 2), share: Float64Array.of(0.5, 0.5) }
 */
export function placesOnLadder(ladder: WireLadder, stationsMm: ArrayLike<number>): LadderPlaces {
  const wires = ladder.links.flatMap((link, i) => (link.kind === 'wire' ? [i] : []));
  const link = new Int32Array(stationsMm.length);
  const share = new Float64Array(stationsMm.length);
  for (let i = 0; i < stationsMm.length; i++) {
    const stationMm = Math.min(ladder.lengthMm, Math.max(0, stationsMm[i] as number));
    let low = 0;
    let high = wires.length - 1;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((ladder.links[wires[middle] as number] as LadderLink).toMm >= stationMm) high = middle;
      else low = middle + 1;
    }
    link[i] = wires[low] as number;
    const held = ladder.links[link[i] as number] as LadderLink;
    share[i] = (wireOhmsTo(ladder, stationMm) - wireOhmsTo(ladder, held.fromMm)) / held.ohms;
  }
  return { link, share };
}

/** Cumulative ohms, integrated along the route: a warm stretch must not be spread over the whole. */
function ohmsProfile(
  line: CircuitLine,
  knowledge: WireKnowledge,
  edgesMm: Float64Array,
): { profileMm: Float64Array; profileOhms: Float64Array } {
  const warm = knowledge.warmStretches ?? [];
  const perMetreAt = (celsius: number, conductorMm2: number): number => {
    const table = conductorOhmsPerMetre(conductorMm2, celsius);
    const known = knowledge.ohmsPerMetre;
    return known === undefined ? table : (known * table) / conductorOhmsPerMetre(line.circuit.conductorMm2);
  };
  const stations = new Set([0, line.lengthMm, ...edgesMm]);
  for (const { fromMm } of line.branches) stations.add(fromMm);
  for (const { fromMm, toMm } of warm)
    for (const mm of [fromMm, toMm]) if (mm > 0 && mm < line.lengthMm) stations.add(mm);
  const profileMm = Float64Array.from(stations).sort();
  const profileOhms = new Float64Array(profileMm.length);
  for (let i = 1; i < profileMm.length; i++) {
    const fromMm = profileMm[i - 1] as number;
    const toMm = profileMm[i] as number;
    const middle = (fromMm + toMm) / 2;
    const held = warm.find((stretch) => stretch.fromMm <= middle && middle <= stretch.toMm);
    const branch = line.branches.find((each) => each.fromMm <= middle && middle <= each.toMm);
    const { conductorMm2 } = branch?.circuit ?? line.circuit;
    const perMetre = perMetreAt(held?.celsius ?? knowledge.celsius ?? 20, conductorMm2);
    profileOhms[i] = (profileOhms[i - 1] as number) + (perMetre * (toMm - fromMm)) / 1000;
  }
  return { profileMm, profileOhms };
}

function ohmsAt(profileMm: Float64Array, profileOhms: Float64Array, stationMm: number): number {
  let piece = 0;
  let last = profileMm.length - 2;
  while (piece < last) {
    const middle = (piece + last) >> 1;
    if ((profileMm[middle + 1] as number) < stationMm) piece = middle + 1;
    else last = middle;
  }
  const fromMm = profileMm[piece] as number;
  const span = (profileMm[piece + 1] as number) - fromMm;
  const from = profileOhms[piece] as number;
  return from + (((profileOhms[piece + 1] as number) - from) * (stationMm - fromMm)) / span;
}
