import { fail, type Result } from '../../quantity/result.ts';
import type { MapDocument } from '../map-document.ts';
import { draftOf, recordOf } from '../map-draft.ts';
import type { Patch } from '../patch.ts';
import type { Segment } from '../records.ts';
import { segmentLine } from '../segment-line.ts';

/**
 * Adds one whole run between two nodes that are there. Refuses `duplicate-id`, `same-node`,
 * `missing-reference`, `bad-field` and a run without length (`zero-length`).
 * @example
 * addSegment(sample.map, { segment: { ...sample.rear, id: 'segment:twin' } }).value.added[0].id // => 'segment:twin'
 */
export function addSegment(map: MapDocument, input: { readonly segment: Segment }): Result<Patch> {
  const { segment } = input;
  if (recordOf(map, segment.id)) return fail({ code: 'duplicate-id', thing: segment.id });
  if (segment.fromNodeId === segment.toNodeId) return fail({ code: 'same-node', node: segment.fromNodeId });
  const draft = draftOf(map);
  draft.put(segment);
  const patch = draft.finish();
  if (patch.ok && !segmentLine(map, segment)) return fail({ code: 'zero-length', thing: segment.id });
  return patch;
}
