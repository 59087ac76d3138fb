import type { MapProblem } from '../quantity/problem.ts';
import { stationSlackMm } from '../quantity/tolerance.ts';
import { type MapDocument, type MapRecord, tableOfKind } from './map-document.ts';
import { recordOf } from './map-draft.ts';
import { panelCycle } from './panel-order.ts';
import type { Segment } from './records.ts';
import { referencesOf } from './references.ts';
import { segmentLine } from './segment-line.ts';

/**
 * Everything on a map that does not hang together: references to what is not there, clips that
 * share an id, a ring in the order of panels, runs without
 * length, stations beyond a run's end, ranges told backwards. Traces of circuits are `circuitFaults`'s.
 * O(records).
 * @example
 * mapFaults(sample.map) // => []
 */
export function mapFaults(map: MapDocument): readonly MapProblem[] {
  const problems: MapProblem[] = [];
  const clipIds = new Set<string>();
  for (const name of Object.values(tableOfKind)) {
    for (const record of (map[name] as ReadonlyMap<string, MapRecord>).values()) {
      problems.push(...missingReferences(map, record));
    }
  }
  for (const segment of map.segments.values()) {
    for (const clip of segment.clips) {
      if (clipIds.has(clip.id)) problems.push({ code: 'duplicate-id', thing: clip.id });
      clipIds.add(clip.id);
    }
    problems.push(...runFaults(map, segment));
  }
  const panels = panelCycle(map.panels);
  if (panels) problems.push({ code: 'panel-cycle', panels });
  return problems;
}

function* missingReferences(map: MapDocument, record: MapRecord): Generator<MapProblem> {
  for (const { field, id } of referencesOf(record)) {
    if (!recordOf(map, id)) {
      yield { code: 'missing-reference', thing: record.id, field, missing: id };
    }
  }
}

function* runFaults(map: MapDocument, segment: Segment): Generator<MapProblem> {
  for (const [i, { fromMm, toMm }] of segment.tags.entries()) {
    if (fromMm > toMm) {
      yield { code: 'range-reversed', thing: segment.id, field: `tags[${i}]`, fromMm, toMm };
    }
  }
  if (!map.nodes.has(segment.fromNodeId) || !map.nodes.has(segment.toNodeId)) return;
  const line = segmentLine(map, segment);
  if (!line) {
    yield { code: 'zero-length', thing: segment.id };
    return;
  }
  const beyond = (field: string, stationMm: number): MapProblem | null =>
    stationMm > line.lengthMm + stationSlackMm
      ? { code: 'beyond-end', thing: segment.id, field, stationMm, lengthMm: line.lengthMm }
      : null;
  for (const [i, clip] of segment.clips.entries()) {
    const problem = beyond(`clips[${i}].stationMm`, clip.stationMm);
    if (problem) yield problem;
  }
  for (const [i, tag] of segment.tags.entries()) {
    const problem = beyond(`tags[${i}].toMm`, tag.toMm) ?? beyond(`tags[${i}].fromMm`, tag.fromMm);
    if (problem) yield problem;
  }
}
