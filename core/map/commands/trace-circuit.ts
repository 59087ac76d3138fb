import type { CircuitId } from '../../quantity/id.ts';
import type { Result } from '../../quantity/result.ts';
import { findRecord } from '../find-record.ts';
import type { MapDocument } from '../map-document.ts';
import { draftOf } from '../map-draft.ts';
import type { Patch } from '../patch.ts';
import { type TraceWishes, tracePath } from '../trace-path.ts';

/**
 * Traces a circuit between two end nodes, through the wished nodes in turn, by the shortest way for a
 * wire (see `tracePath`); its ends then sit at those nodes. Pins at nodes it no longer passes are dropped.
 * Refuses `not-found`, `missing-reference`, `same-node` and `no-path`.
 * @example
 * traceCircuit(sample.map, { circuitId: 'circuit:seat-switch', fromNodeId: 'node:west', toNodeId: 'node:east' }).value.changed[0][1].path.length // => 2
 */
export function traceCircuit(
  map: MapDocument,
  input: { readonly circuitId: CircuitId } & TraceWishes,
): Result<Patch> {
  const found = findRecord(map.circuits, input.circuitId);
  if (!found.ok) return found;
  const path = tracePath(map, input);
  if (!path.ok) return path;
  const passed = new Set(
    path.value.flatMap((step) => {
      const segment = map.segments.get(step.segmentId);
      return segment ? [segment.fromNodeId, segment.toNodeId] : [];
    }),
  );
  const [first, last] = found.value.ends;
  const draft = draftOf(map);
  draft.put({
    ...found.value,
    path: [...path.value],
    pins: found.value.pins.filter((pin) => passed.has(pin.nodeId)),
    ends: [
      { ...first, nodeId: input.fromNodeId },
      { ...last, nodeId: input.toNodeId },
    ],
  });
  return draft.finish();
}
