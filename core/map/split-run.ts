import { pieceAt, pointAtStation, type StationLine } from '../geometry/station-line.ts';
import type { NodeId, SegmentId } from '../quantity/id.ts';
import { samePlaceMm } from '../quantity/tolerance.ts';
import type { MapDraft } from './map-draft.ts';
import { mergedTags } from './panel-tags.ts';
import type { MapNode, PanelTag, PathStep, Segment } from './records.ts';
import { panelsOver } from './segment-needs.ts';

/** The ids a split needs: of the new node and of the part of the run beyond it. */
export interface SplitIds {
  readonly nodeId: NodeId;
  readonly segmentId: SegmentId;
}

/** Nearer than this to a drawn corner the split takes the corner itself, so that no sliver is left. */
const onCornerMm = 1e-6;

/**
 * Splits a run of a draft at a station inside it. The part up to the station keeps the run's id. Clips,
 * tags, traits and circuit paths follow exactly; a measured length is shared out in proportion to the drawn
 * one, so every circuit keeps its length. A rounded run becomes its own chords, since a rounded line
 * cannot be cut and stay the same line.
 * @example
 * splitRun(draftOf(sample.map), sample.middle, sample.line.spans[1].line, 200, { nodeId: 'node:n', segmentId: 'segment:n' }).at.xMm // => 700
 */
export function splitRun(
  draft: MapDraft,
  segment: Segment,
  line: StationLine,
  stationMm: number,
  ids: SplitIds,
): MapNode {
  const node: MapNode = {
    id: ids.nodeId,
    name: '',
    kind: 'branch',
    at: pointAtStation(line, stationMm),
    panelIds: [...panelsOver(segment, stationMm)],
    note: '',
  };
  const { piece } = pieceAt(line, stationMm);
  const inner = line.points.slice(1, -1);
  const awayFromCut = (index: number): boolean =>
    Math.abs((line.stationsMm[index + 1] as number) - stationMm) > onCornerMm;
  const rounded = segment.smooth && segment.bends.length > 0;
  const shape = { smooth: rounded ? false : segment.smooth };
  const measured = segment.measuredLengthMm;
  const firstMeasured = measured === null ? null : measured * (stationMm / line.lengthMm);
  const first: Segment = {
    ...segment,
    ...shape,
    toNodeId: node.id,
    bends: inner.filter((_, i) => i < piece && awayFromCut(i)),
    measuredLengthMm: firstMeasured,
    clips: segment.clips.filter((clip) => clip.stationMm <= stationMm),
    tags: tagsWithin(segment.tags, 0, stationMm),
  };
  const second: Segment = {
    ...segment,
    ...shape,
    id: ids.segmentId,
    fromNodeId: node.id,
    bends: inner.filter((_, i) => i >= piece && awayFromCut(i)),
    measuredLengthMm: measured === null || firstMeasured === null ? null : measured - firstMeasured,
    clips: segment.clips
      .filter((clip) => clip.stationMm > stationMm)
      .map((clip) => ({ ...clip, stationMm: clip.stationMm - stationMm })),
    tags: tagsWithin(segment.tags, stationMm, line.lengthMm),
  };
  draft.put(node);
  draft.put(first);
  draft.put(second);
  for (const circuit of draft.map.circuits.values()) {
    if (!circuit.path.some((step) => step.segmentId === segment.id)) continue;
    draft.put({
      ...circuit,
      path: circuit.path.flatMap((step): PathStep[] => {
        if (step.segmentId !== segment.id) return [step];
        const beyond = { segmentId: second.id, reversed: step.reversed };
        return step.reversed ? [beyond, step] : [step, beyond];
      }),
    });
  }
  return node;
}

function tagsWithin(tags: readonly PanelTag[], fromMm: number, toMm: number): PanelTag[] {
  return mergedTags(
    tags
      .filter((tag) => tag.fromMm < toMm - samePlaceMm && tag.toMm > fromMm + samePlaceMm)
      .map((tag) => ({
        ...tag,
        fromMm: Math.max(tag.fromMm, fromMm) - fromMm,
        toMm: Math.min(tag.toMm, toMm) - fromMm,
      })),
  );
}
