import { nearestStation } from '../geometry/nearest-station.ts';
import { pointAtStation } from '../geometry/station-line.ts';
import { idKind, type NodeId } from '../quantity/id.ts';
import { fail, type Result } from '../quantity/result.ts';
import type { MapDocument } from './map-document.ts';
import { draftOf, type MapDraft, recordOf } from './map-draft.ts';
import { movedBy, movedRecord } from './moved-record.ts';
import type { Patch } from './patch.ts';
import type { Segment } from './records.ts';
import { keptInPlace } from './restation-segment.ts';
import { segmentLine } from './segment-line.ts';
import { withClips } from './with-clips.ts';

/** A distance in plan. */
export interface PlanOffset {
  readonly dxMm: number;
  readonly dyMm: number;
}

/**
 * Moves things, each by its own distance in plan. A run takes both its nodes along, unless those have a
 * distance of their own; where all of it moves alike, what sits on it keeps its station, and where only an
 * end moves, clips and tags stay where they physically are. A clip slides along its run to the place
 * nearest to where it was moved; one whose run moves goes with the run. Refuses `not-found` and `bad-field`.
 * O(things + runs).
 * @example
 * movedThings(sample.map, new Map([['clip:a', { dxMm: 30, dyMm: 400 }]])).value.changed[0][1].clips[0].stationMm // => 130
 */
export function movedThings(map: MapDocument, offsets: ReadonlyMap<string, PlanOffset>): Result<Patch> {
  const draft = draftOf(map);
  const nodeOffsets = new Map<NodeId, PlanOffset>();
  const clipOffsets = new Map<string, PlanOffset>();
  for (const [id, offset] of offsets) {
    if (idKind(id) === 'clip') {
      clipOffsets.set(id, offset);
      continue;
    }
    const record = recordOf(map, id);
    if (!record) return fail({ code: 'not-found', thing: id });
    if (idKind(id) === 'node') nodeOffsets.set(id as NodeId, offset);
    else if (idKind(id) === 'segment') {
      const { fromNodeId, toNodeId } = record as Segment;
      for (const nodeId of [fromNodeId, toNodeId]) {
        if (!nodeOffsets.has(nodeId)) nodeOffsets.set(nodeId, offsets.get(nodeId) ?? offset);
      }
    } else if (idKind(id) !== 'circuit') {
      draft.put(movedRecord(record, movedBy(offset.dxMm, offset.dyMm)));
    }
  }
  for (const [nodeId, { dxMm, dyMm }] of nodeOffsets) {
    const node = map.nodes.get(nodeId);
    if (node) draft.put(movedRecord(node, movedBy(dxMm, dyMm)));
  }
  for (const segment of map.segments.values()) {
    const from = nodeOffsets.get(segment.fromNodeId);
    const to = nodeOffsets.get(segment.toNodeId);
    const own = offsets.get(segment.id);
    if (!from && !to) continue;
    const alike = from && to && from.dxMm === to.dxMm && from.dyMm === to.dyMm;
    const shift = own ?? (alike ? from : undefined);
    const bent = shift ? movedRecord(segment, movedBy(shift.dxMm, shift.dyMm)) : segment;
    const whole = alike && shift?.dxMm === from.dxMm && shift.dyMm === from.dyMm;
    if (whole || segment.clips.length + segment.tags.length === 0) {
      if (bent !== segment) draft.put(bent);
    } else draft.put(keptInPlace(bent, segmentLine(map, segment), segmentLine(draft.map, bent)));
  }
  const lost = clipOffsets.size > 0 ? slideClips(draft, clipOffsets, nodeOffsets) : null;
  return lost ? fail({ code: 'not-found', thing: lost }) : draft.finish();
}

/** Slides clips along their runs; gives the id of a clip no run has, or null. */
function slideClips(
  draft: MapDraft,
  clipOffsets: ReadonlyMap<string, PlanOffset>,
  nodeOffsets: ReadonlyMap<NodeId, PlanOffset>,
): string | null {
  const left = new Set(clipOffsets.keys());
  for (const segment of [...draft.map.segments.values()]) {
    if (!segment.clips.some((clip) => left.has(clip.id))) continue;
    const line = segmentLine(draft.map, segment);
    const taken = nodeOffsets.has(segment.fromNodeId) && nodeOffsets.has(segment.toNodeId);
    const clips = segment.clips.map((clip) => {
      const offset = clipOffsets.get(clip.id);
      left.delete(clip.id);
      if (!offset || !line || taken) return clip;
      const wanted = movedBy(offset.dxMm, offset.dyMm).point(pointAtStation(line, clip.stationMm));
      return { ...clip, stationMm: nearestStation(line, wanted, clip.stationMm).stationMm };
    });
    draft.put(withClips(segment, clips));
  }
  const [lost] = left;
  return lost ?? null;
}
