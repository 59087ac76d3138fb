import type { SegmentId } from '../../quantity/id.ts';
import { fail, type Result } from '../../quantity/result.ts';
import { findRecord } from '../find-record.ts';
import type { MapDocument } from '../map-document.ts';
import { draftOf } from '../map-draft.ts';
import type { Patch } from '../patch.ts';
import type { Segment } from '../records.ts';
import { keptInPlace } from '../restation-segment.ts';
import { segmentLine } from '../segment-line.ts';

/** What can be said anew about a run without changing what it joins or what sits on it. */
export type SegmentChanges = Partial<Omit<Segment, 'id' | 'fromNodeId' | 'toNodeId' | 'clips' | 'tags'>>;

/**
 * Changes anything about a run: name, route, covering, diameter, measured length, traits, bends, rounding.
 * Where its line changes, clips and tags stay where they physically are. Refuses `not-found`, `bad-field`
 * and a line without length (`zero-length`).
 * @example
 * changeSegment(sample.map, { segmentId: 'segment:rear', changes: { covering: 'bare' } }).value.changed[0][1].covering // => 'bare'
 */
export function changeSegment(
  map: MapDocument,
  input: { readonly segmentId: SegmentId; readonly changes: SegmentChanges },
): Result<Patch> {
  const found = findRecord(map.segments, input.segmentId);
  if (!found.ok) return found;
  const before = found.value;
  const draft = draftOf(map);
  let after: Segment = { ...before, ...input.changes };
  if (input.changes.bends || input.changes.smooth !== undefined) {
    const newLine = segmentLine(map, after);
    const oldLine = segmentLine(map, before);
    if (oldLine && !newLine) return fail({ code: 'zero-length', thing: before.id });
    after = keptInPlace(after, oldLine, newLine);
  }
  draft.put(after);
  return draft.finish();
}
