import type { PlugSide } from '../circuit/car-state.ts';
import { endPlaces, isReached, placeOfNode, type ReachedPiece, reachedWire } from '../circuit/wire-reach.ts';
import { coveredShare } from '../locate/station-ranges.ts';
import type { NodeId } from '../quantity/id.ts';
import { placesInReach } from './places-in-reach.ts';
import type { TestGrounds } from './possible-test.ts';
import { panelsOff } from './standing-entries.ts';

/** Where a piece ends: a plug that is parted, or an end of the wire that is unplugged. */
export interface PiecePlace {
  readonly nodeId: NodeId;
  readonly atMm: number;
  /** The half of the parted plug that the piece hangs on; null at an end. */
  readonly side: PlugSide | null;
}

/** A piece of the wire that hangs free once two places on it are parted. */
export interface WirePiece {
  /** The circuit itself (0) or a branch. */
  readonly row: number;
  /** In the order of their stations; at least one is a plug in reach. */
  readonly places: readonly [PiecePlace, PiecePlace];
  /** All wire that then hangs together, branches between the two places with it. */
  readonly reached: readonly ReachedPiece[];
  /** What must be apart: the two places, and the ends of the branches between. */
  readonly apartNodeIds: readonly NodeId[];
  readonly plugsParted: number;
  /** Per cell, how much of it lies on the piece, and how much on the wire between the two places. */
  readonly share: Float64Array;
  readonly between: Float64Array;
}

/** A piece this likely to hold the fault, or to be without it, tells nothing; of the whole wire's chance (judgement). */
const leastMass = 0.04;

/** Pieces asked of: those whose chance is nearest to half (judgement). */
const mostPieces = 8;

/** Plugs asked of on one wire: those in its likely middle (judgement). */
const mostPlugs = 6;

/**
 * Pieces of the wire between a plug in reach and another plug in reach or an end, those first that halve
 * the chance best. An end that nobody knows gives none.
 * @example
 * wirePieces({ map: sample.map, line: sample.line, cells: layHypotheses(new Float64Array([0, 500, 1500]), []), cellProbability: Float64Array.of(0.5, 0.5), stretches: [], entries: [], medianMm: 700, off: new Set(['panel:tread', 'panel:seat']) }).map(({ apartNodeIds }) => apartNodeIds) // => [['node:west', 'node:middle'], ['node:middle', 'node:far']]
 */
export function wirePieces(grounds: TestGrounds): WirePiece[] {
  const { map, line, entries, cellProbability } = grounds;
  const inReach = placesInReach(map, entries, grounds.off ?? panelsOff(entries));
  const ends = endPlaces(line);
  const rows = [line.nodes, ...line.branches.map(({ nodes }) => nodes)];
  const whole = cellProbability.reduce((sum, p) => sum + p, 0);
  const massBefore = (mm: number): number => massOn(grounds, shareOf(grounds, [{ fromMm: 0, toMm: mm }]));
  const found: (WirePiece & { readonly fromHalf: number })[] = [];
  rows.forEach((nodes, row) => {
    const isHere = (nodeId: NodeId, atMm: number): boolean => {
      const place = placeOfNode(line, { nodeId });
      return place?.row === row && place.atMm === atMm;
    };
    const plugs = nodes
      .slice(1, -1)
      .filter(({ nodeId, stationMm }) => inReach(nodeId) && isHere(nodeId, stationMm))
      .filter(({ nodeId }) => map.nodes.get(nodeId)?.kind === 'inline-connector')
      .map((node) => ({ ...node, fromHalf: Math.abs(massBefore(node.stationMm) - whole / 2) }))
      .sort((a, b) => a.fromHalf - b.fromHalf)
      .slice(0, mostPlugs)
      .sort((a, b) => a.stationMm - b.stationMm);
    if (plugs.length === 0) return;
    const outer = ends.flatMap((at) =>
      at.row === row && at.end.nodeId !== null
        ? [{ nodeId: at.end.nodeId, atMm: at.atMm, isPlug: false }]
        : [],
    );
    const places = [
      ...plugs.map(({ nodeId, stationMm }) => ({ nodeId, atMm: stationMm, isPlug: true })),
      ...outer,
    ].sort((a, b) => a.atMm - b.atMm);
    places.forEach((a, i) => {
      for (const b of places.slice(i + 1)) {
        if (!a.isPlug && !b.isPlug) continue;
        const cut = { row, atMm: a.atMm, side: 'second-end' as const };
        const reached = reachedWire(line, { ...cut, apartNodeIds: [a.nodeId, b.nodeId] });
        const parts = [...partsOn(grounds, reached)].filter((id) => id !== a.nodeId && id !== b.nodeId);
        if (parts.includes(null)) continue;
        const share = shareOf(grounds, reached);
        const mass = massOn(grounds, share);
        if (Math.min(mass, whole - mass) < leastMass * whole) continue;
        found.push({
          row,
          places: [
            { nodeId: a.nodeId, atMm: a.atMm, side: a.isPlug ? 'second-end' : null },
            { nodeId: b.nodeId, atMm: b.atMm, side: b.isPlug ? 'first-end' : null },
          ],
          reached,
          apartNodeIds: [a.nodeId, b.nodeId, ...parts.filter((id) => id !== null)],
          plugsParted: Number(a.isPlug) + Number(b.isPlug),
          share,
          between: shareOf(grounds, [{ fromMm: a.atMm, toMm: b.atMm }]),
          fromHalf: Math.abs(mass - whole / 2),
        });
      }
    });
  });
  return found.sort((a, b) => a.fromHalf - b.fromHalf).slice(0, mostPieces);
}

/** Parts at the ends of the pieces; null for one that nobody knows. */
function partsOn({ line }: TestGrounds, reached: readonly ReachedPiece[]): ReadonlySet<NodeId | null> {
  return new Set(
    endPlaces(line)
      .filter((place) => isReached(reached, place))
      .map(({ end }) => end.nodeId),
  );
}

function shareOf(
  { cells }: TestGrounds,
  ranges: readonly { readonly fromMm: number; readonly toMm: number }[],
): Float64Array {
  const { cellCount, cellEdgesMm } = cells;
  return Float64Array.from({ length: cellCount }, (_, cell) =>
    coveredShare(ranges, cellEdgesMm[cell] as number, cellEdgesMm[cell + 1] as number),
  );
}

function massOn({ cellProbability }: TestGrounds, share: Float64Array): number {
  return cellProbability.reduce((sum, p, cell) => sum + p * (share[cell] as number), 0);
}
