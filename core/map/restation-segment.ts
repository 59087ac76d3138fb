import { nearestBodyStation } from '../geometry/nearest-station.ts';
import { pieceAt, pointAtStation, type StationLine } from '../geometry/station-line.ts';
import { samePlaceMm } from '../quantity/tolerance.ts';
import { mergedTags } from './panel-tags.ts';
import type { PanelTag, Segment } from './records.ts';

/**
 * The run with every station on it (clips and tags) put through one rule, kept within 0 and
 * `lengthMm`, clips in order along the run.
 * @example
 * restationed(sample.segment, 500, (stationMm) => 500 - stationMm).clips[0].id // => 'clip:b'
 */
export function restationed(
  segment: Segment,
  lengthMm: number,
  place: (stationMm: number) => number,
): Segment {
  const within = (stationMm: number): number => Math.min(lengthMm, Math.max(0, place(stationMm)));
  const moved = (tag: PanelTag): PanelTag => {
    const a = within(tag.fromMm);
    const b = within(tag.toMm);
    return { ...tag, fromMm: Math.min(a, b), toMm: Math.max(a, b) };
  };
  return {
    ...segment,
    clips: segment.clips
      .map((clip) => ({ ...clip, stationMm: within(clip.stationMm) }))
      .sort((a, b) => a.stationMm - b.stationMm),
    tags: mergedTags(segment.tags.map(moved)),
  };
}

/**
 * The run after its line was redrawn: clips and tag ends stay where they physically are, at the nearest
 * place of the new line; tags that ran to an end still do. Without an old or new line nothing moves.
 * O(stations x points).
 * @example
 * keptInPlace(sample.segment, sample.line.spans[0].line, sample.line.spans[0].line).clips[1].stationMm // => 400
 */
export function keptInPlace(
  segment: Segment,
  before: StationLine | null,
  after: StationLine | null,
): Segment {
  if (!before || !after) return segment;
  return restationed(segment, after.lengthMm, (stationMm) => {
    if (stationMm <= samePlaceMm) return stationMm;
    if (stationMm >= before.lengthMm - samePlaceMm) return after.lengthMm - (before.lengthMm - stationMm);
    const hint = (stationMm / before.lengthMm) * after.lengthMm;
    return nearestBodyStation(after, pointAtStation(before, stationMm), hint).stationMm;
  });
}

/**
 * The run after every one of its points was moved by one rule that keeps straight pieces straight
 * (scaling, mirroring): each station keeps its piece and its share of that piece, which is exact.
 * @example
 * keptOnPieces(sample.segment, sample.line.spans[0].line, sample.line.spans[0].line).clips[1].stationMm // => 400
 */
export function keptOnPieces(
  segment: Segment,
  before: StationLine | null,
  after: StationLine | null,
): Segment {
  if (!before || !after || before.points.length !== after.points.length) return segment;
  return restationed(segment, after.lengthMm, (stationMm) => {
    const { piece, share } = pieceAt(before, stationMm);
    const start = after.stationsMm[piece] as number;
    return start + ((after.stationsMm[piece + 1] as number) - start) * share;
  });
}
