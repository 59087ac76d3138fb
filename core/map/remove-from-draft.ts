import { type CircuitId, idKind, type NodeId, type PanelId, type SegmentId } from '../quantity/id.ts';
import { fail, ok, type Result } from '../quantity/result.ts';
import type { MapDocument } from './map-document.ts';
import { type MapDraft, recordOf } from './map-draft.ts';
import type { Circuit } from './records.ts';
import { runsAtNodes } from './topology.ts';

/**
 * Everything that leaves a map when some things are removed: the things themselves, the runs of a
 * removed node, and plain branches and loose ends that are left without a run. Clips are named by their
 * own ids. Refuses `not-found`.
 * @example
 * [...idsLeaving(sample.map, ['node:far']).value] // => ['node:far', 'segment:rear']
 */
export function idsLeaving(map: MapDocument, ids: readonly string[]): Result<ReadonlySet<string>> {
  const leaving = new Set(ids);
  const clipIds = new Set<string>(ids.filter((id) => idKind(id) === 'clip'));
  const wantedClips = clipIds.size;
  const runs = runsAtNodes(map);
  for (const id of ids) {
    if (idKind(id) === 'node') {
      for (const segment of runs.get(id as NodeId) ?? []) leaving.add(segment.id);
    }
    if (idKind(id) !== 'clip' && (!recordOf(map, id) || id === map.details.id)) {
      return fail({ code: 'not-found', thing: id });
    }
  }
  if (wantedClips > 0) {
    for (const segment of map.segments.values()) {
      for (const clip of segment.clips) clipIds.delete(clip.id);
    }
    const [missing] = clipIds;
    if (missing) return fail({ code: 'not-found', thing: missing });
  }
  for (const id of [...leaving]) {
    const segment = map.segments.get(id as SegmentId);
    if (!segment) continue;
    for (const nodeId of [segment.fromNodeId, segment.toNodeId]) {
      const kind = map.nodes.get(nodeId)?.kind;
      const bare = (runs.get(nodeId) ?? []).every((run) => leaving.has(run.id));
      if (bare && (kind === 'branch' || kind === 'loose-end')) leaving.add(nodeId);
    }
  }
  return ok(leaving);
}

/**
 * Takes things and whatever depends on them out of a draft, so that nothing is left that names what is
 * gone: tags, `offFirst` lines and reach lists of a panel; the trace of a circuit through a removed run; a
 * circuit's pins and ends at a removed node. O(records).
 * @example
 * removeFromDraft(draftOf(sample.map), new Set(['panel:tread'])) // => undefined
 */
export function removeFromDraft(draft: MapDraft, leaving: ReadonlySet<string>): void {
  const gone = (id: string): boolean => leaving.has(id);
  for (const id of leaving) if (idKind(id) !== 'clip') draft.drop(id);
  for (const node of draft.map.nodes.values()) {
    if (node.panelIds.some(gone)) {
      draft.put({ ...node, panelIds: node.panelIds.filter((id: PanelId) => !gone(id)) });
    }
  }
  for (const panel of draft.map.panels.values()) {
    if (panel.offFirst.some(gone)) {
      draft.put({ ...panel, offFirst: panel.offFirst.filter((id: PanelId) => !gone(id)) });
    }
  }
  for (const segment of draft.map.segments.values()) {
    const tags = segment.tags.filter((tag) => !gone(tag.panelId));
    const clips = segment.clips.filter((clip) => !gone(clip.id));
    if (tags.length < segment.tags.length || clips.length < segment.clips.length) {
      draft.put({ ...segment, tags, clips });
    }
  }
  for (const circuit of draft.map.circuits.values()) {
    const after = circuitWithout(circuit, gone);
    if (after !== circuit) draft.put(after);
  }
}

function circuitWithout(circuit: Circuit, gone: (id: NodeId | SegmentId | CircuitId) => boolean): Circuit {
  const untraced = circuit.path.some((step) => gone(step.segmentId));
  const pins = circuit.pins.filter((pin) => !gone(pin.nodeId));
  const [first, last] = circuit.ends;
  const end = (each: Circuit['ends'][number]) =>
    each.nodeId !== null && gone(each.nodeId) ? { ...each, nodeId: null } : each;
  const ends: Circuit['ends'] = [end(first), end(last)];
  if (!untraced && pins.length === circuit.pins.length && ends[0] === first && ends[1] === last) {
    return circuit;
  }
  return { ...circuit, path: untraced ? [] : circuit.path, pins, ends };
}
