import { idKind } from '../quantity/id.ts';
import type { MapRecord } from './map-document.ts';
import { mergedTags } from './panel-tags.ts';
import type { Circuit, CircuitEnd, MapNode, Panel, Segment } from './records.ts';
import { withClips } from './with-clips.ts';

/**
 * A record under a new id, with every id it names put through the same rule, its clips' own included.
 * Details have no id to change and come back as they are.
 * @example
 * renamedRecord(sample.rear, (id) => `${id}-2`).toNodeId // => 'node:far-2'
 */
export function renamedRecord<T extends MapRecord>(record: T, rename: <I extends string>(id: I) => I): T {
  return renamedReferences({ ...record, id: rename(record.id) } as MapRecord, rename) as T;
}

function renamedReferences(record: MapRecord, rename: <I extends string>(id: I) => I): MapRecord {
  switch (idKind(record.id)) {
    case 'node': {
      const node = record as MapNode;
      return { ...node, panelIds: node.panelIds.map(rename) };
    }
    case 'segment': {
      const segment = record as Segment;
      const renamed = {
        ...segment,
        fromNodeId: rename(segment.fromNodeId),
        toNodeId: rename(segment.toNodeId),
        tags: mergedTags(segment.tags.map((tag) => ({ ...tag, panelId: rename(tag.panelId) }))),
      };
      return withClips(
        renamed,
        segment.clips.map((clip) => ({ ...clip, id: rename(clip.id) })),
      );
    }
    case 'panel': {
      const panel = record as Panel;
      return { ...panel, offFirst: panel.offFirst.map(rename) };
    }
    case 'circuit': {
      const circuit = record as Circuit;
      const end = (each: CircuitEnd): CircuitEnd => ({ ...each, nodeId: each.nodeId && rename(each.nodeId) });
      return {
        ...circuit,
        path: circuit.path.map((step) => ({ ...step, segmentId: rename(step.segmentId) })),
        pins: circuit.pins.map((pin) => ({ ...pin, nodeId: rename(pin.nodeId) })),
        ends: [end(circuit.ends[0]), end(circuit.ends[1])],
      };
    }
    default:
      return record;
  }
}
