import type { BodyPoint } from '../../geometry/place.ts';
import type { NodeId } from '../../quantity/id.ts';
import type { Result } from '../../quantity/result.ts';
import { findRecord } from '../find-record.ts';
import type { MapDocument } from '../map-document.ts';
import { draftOf } from '../map-draft.ts';
import type { Patch } from '../patch.ts';
import { keptInPlace } from '../restation-segment.ts';
import { segmentLine } from '../segment-line.ts';
import { runsAtNode } from '../topology.ts';

/**
 * Moves a node, and with it the ends of its runs. Clips and tags of those runs stay where they physically
 * are, at the nearest place of the new line. Refuses `not-found` and `bad-field`.
 * @example
 * moveNode(sample.map, { nodeId: 'node:far', at: { xMm: 1600, yMm: 0, zMm: 0 } }).value.changed.length // => 1
 */
export function moveNode(
  map: MapDocument,
  input: { readonly nodeId: NodeId; readonly at: BodyPoint },
): Result<Patch> {
  const node = findRecord(map.nodes, input.nodeId);
  if (!node.ok) return node;
  const draft = draftOf(map);
  draft.put({ ...node.value, at: input.at });
  for (const segment of runsAtNode(map, input.nodeId)) {
    if (segment.clips.length + segment.tags.length === 0) continue;
    draft.put(keptInPlace(segment, segmentLine(map, segment), segmentLine(draft.map, segment)));
  }
  return draft.finish();
}
