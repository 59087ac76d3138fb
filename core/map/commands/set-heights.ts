import type { NodeId, SegmentId } from '../../quantity/id.ts';
import { fail, type Result } from '../../quantity/result.ts';
import { findRecord } from '../find-record.ts';
import type { MapDocument } from '../map-document.ts';
import { draftOf } from '../map-draft.ts';
import type { Patch } from '../patch.ts';
import type { Segment } from '../records.ts';
import { keptOnPieces } from '../restation-segment.ts';
import { segmentLine } from '../segment-line.ts';

/** One point of a run in its side profile and the height it gets, in mm above the floor. */
export interface HeightAt {
  readonly at: 'from' | 'to' | { readonly bend: number };
  readonly zMm: number;
}

/**
 * Sets heights of a run at its ends and bends. An end's height is its node's, so the other runs that meet
 * there follow. Nothing moves in plan: clips and tags keep their places seen from above. Refuses `not-found`,
 * a bend that is not there (`bad-value`), `bad-field`, and a run left without length (`zero-length`).
 * O(runs).
 * @example
 * setHeights(sample.map, { segmentId: 'segment:rear', heights: [{ at: 'to', zMm: 300 }] }).value.changed[0][1].at.zMm // => 300
 */
export function setHeights(
  map: MapDocument,
  input: { readonly segmentId: SegmentId; readonly heights: readonly HeightAt[] },
): Result<Patch> {
  const found = findRecord(map.segments, input.segmentId);
  if (!found.ok) return found;
  const segment = found.value;
  const draft = draftOf(map);
  const bends = [...segment.bends];
  const raised = new Set<NodeId>();
  for (const { at, zMm } of input.heights) {
    if (typeof at === 'object') {
      const bend = bends[at.bend];
      if (!bend) {
        const allowed = `0 .. ${bends.length - 1}`;
        return fail({ code: 'bad-value', field: 'bend', value: at.bend, allowed });
      }
      bends[at.bend] = { ...bend, zMm };
      continue;
    }
    const nodeId = at === 'from' ? segment.fromNodeId : segment.toNodeId;
    const node = findRecord(draft.map.nodes, nodeId);
    if (!node.ok) return node;
    draft.put({ ...node.value, at: { ...node.value.at, zMm } });
    raised.add(nodeId);
  }
  const own: Segment = { ...segment, bends };
  for (const each of map.segments.values()) {
    const touched = each.id === segment.id || raised.has(each.fromNodeId) || raised.has(each.toNodeId);
    if (!touched) continue;
    const after = each.id === segment.id ? own : each;
    const before = segmentLine(map, each);
    const line = segmentLine(draft.map, after);
    if (before && !line) return fail({ code: 'zero-length', thing: each.id });
    const carries = after.clips.length + after.tags.length > 0;
    if (carries || after !== each) draft.put(keptOnPieces(after, before, line));
  }
  return draft.finish();
}
