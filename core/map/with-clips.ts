import { compareText } from '../quantity/compare-text.ts';
import type { Clip, Segment } from './records.ts';

/**
 * The run with these clips, in order along it.
 * @example
 * withClips(sample.segment, sample.segment.clips.toReversed()).clips[0].id // => 'clip:a'
 */
export function withClips(segment: Segment, clips: readonly Clip[]): Segment {
  return {
    ...segment,
    clips: [...clips].sort((a, b) => a.stationMm - b.stationMm || compareText(a.id, b.id)),
  };
}
