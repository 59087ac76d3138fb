import { idKind } from '../quantity/id.ts';
import type { MapRecord } from './map-document.ts';
import type { Circuit, MapNode, Panel, Segment } from './records.ts';

/** One record's mention of another. */
export interface Reference {
  readonly field: string;
  readonly id: string;
}

/**
 * Every other record a record names, with the field that names it.
 * @example
 * referencesOf(sample.seat) // => [{ field: 'offFirst[0]', id: 'panel:tread' }]
 */
export function referencesOf(record: MapRecord): readonly Reference[] {
  switch (idKind(record.id)) {
    case 'node':
      return listed('panelIds', (record as MapNode).panelIds);
    case 'panel':
      return listed('offFirst', (record as Panel).offFirst);
    case 'segment': {
      const segment = record as Segment;
      return [
        { field: 'fromNodeId', id: segment.fromNodeId },
        { field: 'toNodeId', id: segment.toNodeId },
        ...segment.tags.map((tag, i) => ({ field: `tags[${i}].panelId`, id: tag.panelId })),
      ];
    }
    case 'circuit': {
      const circuit = record as Circuit;
      return [
        ...circuit.path.map((step, i) => ({ field: `path[${i}].segmentId`, id: step.segmentId })),
        ...circuit.pins.map((pin, i) => ({ field: `pins[${i}].nodeId`, id: pin.nodeId })),
        ...circuit.ends.flatMap((end, i) =>
          end.nodeId === null ? [] : [{ field: `ends[${i}].nodeId`, id: end.nodeId }],
        ),
      ];
    }
    default:
      return [];
  }
}

const listed = (field: string, ids: readonly string[]): readonly Reference[] =>
  ids.map((id, i) => ({ field: `${field}[${i}]`, id }));
