import type { Segment } from './records.ts';
import { restationed } from './restation-segment.ts';

/**
 * The run told from its other end: ends and bends swapped, every station measured from the new start.
 * Its line in the car is the same.
 * @example
 * reversedRun(sample.segment, 500).clips.map((clip) => clip.stationMm) // => [100, 400]
 */
export function reversedRun(segment: Segment, drawnLengthMm: number): Segment {
  return restationed(
    {
      ...segment,
      fromNodeId: segment.toNodeId,
      toNodeId: segment.fromNodeId,
      bends: segment.bends.toReversed(),
    },
    drawnLengthMm,
    (stationMm) => drawnLengthMm - stationMm,
  );
}
