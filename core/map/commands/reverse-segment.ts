import type { SegmentId } from '../../quantity/id.ts';
import type { Result } from '../../quantity/result.ts';
import { findRecord } from '../find-record.ts';
import type { MapDocument } from '../map-document.ts';
import { draftOf } from '../map-draft.ts';
import type { Patch } from '../patch.ts';
import { reversedRun } from '../reverse-run.ts';
import { drawnLengthMm } from '../station-on-run.ts';

/**
 * Turns a run round: stations count from its other end, and circuits that use it go on as before.
 * Nothing moves in the car. Refuses `not-found` and `zero-length`.
 * @example
 * reverseSegment(sample.map, { segmentId: 'segment:rear' }).value.changed[0][1].fromNodeId // => 'node:far'
 */
export function reverseSegment(map: MapDocument, input: { readonly segmentId: SegmentId }): Result<Patch> {
  const segment = findRecord(map.segments, input.segmentId);
  if (!segment.ok) return segment;
  const length = drawnLengthMm(map, segment.value);
  if (!length.ok) return length;
  const draft = draftOf(map);
  draft.put(reversedRun(segment.value, length.value));
  for (const circuit of map.circuits.values()) {
    if (!circuit.path.some((step) => step.segmentId === input.segmentId)) continue;
    draft.put({
      ...circuit,
      path: circuit.path.map((step) =>
        step.segmentId === input.segmentId ? { ...step, reversed: !step.reversed } : step,
      ),
    });
  }
  return draft.finish();
}
