import { compareText } from '../quantity/compare-text.ts';
import type { MapId, NodeId, SegmentId } from '../quantity/id.ts';
import type { MapDocument } from './map-document.ts';
import { mirroredPoint, mirroredVertex } from './mirror-geometry.ts';
import type { Segment } from './records.ts';
import { keptInPlace, keptOnPieces } from './restation-segment.ts';
import { segmentLine } from './segment-line.ts';

/** A map for the other side of drive, and what has to be looked at on a car. */
export interface MirroredMap {
  readonly map: MapDocument;
  /** Runs that were mirrored, wholly or in part: all marked unchecked. */
  readonly markedSegmentIds: readonly SegmentId[];
  /** Those of them of which only an end or the bends were mirrored: now drawn from side to side. */
  readonly partlySegmentIds: readonly SegmentId[];
}

/**
 * A copy of a map for the other side of drive, under a new id and at revision 0. Only the ticked things
 * (ids of outlines, nodes, runs, panels, rub spots) are mirrored about the centre line: dash parts
 * usually mirror, sills and body routes often do not. Nothing else moves. A run is mirrored whole when it and
 * both its nodes are ticked. Pictures stay. O(records).
 * @example
 * mirrorMap(sample.map, { id: 'map:left', ticked: ['node:far'] }).partlySegmentIds // => ['segment:rear']
 */
export function mirrorMap(
  map: MapDocument,
  input: { readonly id: MapId; readonly ticked: Iterable<string> },
): MirroredMap {
  const ticked = new Set(input.ticked);
  const centre = map.details.centreLineYMm;
  const turned = <K extends string, T extends { readonly id: K }>(
    table: ReadonlyMap<K, T>,
    mirror: (record: T) => T,
  ): Map<K, T> => new Map([...table].map(([id, each]) => [id, ticked.has(id) ? mirror(each) : each]));
  const nodes = turned(map.nodes, (node) => ({ ...node, at: mirroredPoint(node.at, centre) }));
  const marked: SegmentId[] = [];
  const partly: SegmentId[] = [];
  const segments = new Map<SegmentId, Segment>();
  const moves = (nodeId: NodeId): boolean => ticked.has(nodeId);
  for (const segment of map.segments.values()) {
    const parts = [moves(segment.fromNodeId), moves(segment.toNodeId), ticked.has(segment.id)];
    if (!parts.includes(true)) {
      segments.set(segment.id, segment);
      continue;
    }
    // Without bends the two nodes are the whole line.
    const whole = segment.bends.length === 0 ? parts[0] && parts[1] : !parts.includes(false);
    const bends = parts[2] ? segment.bends.map((bend) => mirroredPoint(bend, centre)) : segment.bends;
    const moved: Segment = { ...segment, bends, unchecked: true };
    const before = segmentLine(map, segment);
    const after = segmentLine({ ...map, nodes }, moved);
    segments.set(segment.id, whole ? keptOnPieces(moved, before, after) : keptInPlace(moved, before, after));
    marked.push(segment.id);
    if (!whole) partly.push(segment.id);
  }
  return {
    map: {
      ...map,
      id: input.id,
      revision: 0,
      details: { ...map.details, driveSide: map.details.driveSide === 'left' ? 'right' : 'left' },
      outlines: turned(map.outlines, (outline) => ({
        ...outline,
        vertices: outline.vertices.map((vertex) => mirroredVertex(vertex, centre)),
      })),
      nodes,
      segments,
      panels: turned(map.panels, (panel) => ({
        ...panel,
        area: panel.area.map((point) => mirroredPoint(point, centre)),
      })),
      rubSpots: turned(map.rubSpots, (spot) => ({
        ...spot,
        points: spot.points.map((point) => mirroredPoint(point, centre)),
      })),
    },
    markedSegmentIds: marked.sort(compareText),
    partlySegmentIds: partly.sort(compareText),
  };
}
