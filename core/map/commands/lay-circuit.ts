import type { CircuitId, NodeId } from '../../quantity/id.ts';
import { fail, type Result } from '../../quantity/result.ts';
import { findRecord } from '../find-record.ts';
import type { MapDocument } from '../map-document.ts';
import { draftOf } from '../map-draft.ts';
import type { Patch } from '../patch.ts';
import type { CircuitEnd, PathStep } from '../records.ts';

/**
 * Lays a circuit along a given path: another way, a shorter piece of it, or the same turned round. Its ends
 * then sit where the path begins and ends; what was known to sit at a node stays with that node, anything
 * else is `other`. Pins at nodes it no longer passes are dropped. Refuses `not-found`, an empty path
 * (`circuit-untraced`), a run that is not there (`missing-reference`) and a gap (`circuit-broken`).
 * @example
 * layCircuit(sample.map, { circuitId: 'circuit:seat-switch', path: sample.circuit.path.slice(0, 2) }).value.changed[0][1].ends[1] // => { nodeId: 'node:east', kind: 'other' }
 */
export function layCircuit(
  map: MapDocument,
  input: { readonly circuitId: CircuitId; readonly path: readonly PathStep[] },
): Result<Patch> {
  const found = findRecord(map.circuits, input.circuitId);
  if (!found.ok) return found;
  const circuit = found.value;
  const passed: NodeId[] = [];
  let before: string = '';
  for (const step of input.path) {
    const segment = map.segments.get(step.segmentId);
    if (!segment) {
      return fail({ code: 'missing-reference', thing: circuit.id, field: 'path', missing: step.segmentId });
    }
    const [start, end] = step.reversed
      ? [segment.toNodeId, segment.fromNodeId]
      : [segment.fromNodeId, segment.toNodeId];
    if (passed.length === 0) passed.push(start);
    else if (passed[passed.length - 1] !== start) {
      return fail({
        code: 'circuit-broken',
        circuit: circuit.id,
        afterSegment: before,
        nextSegment: segment.id,
      });
    }
    passed.push(end);
    before = segment.id;
  }
  const [first, last] = [passed[0], passed[passed.length - 1]];
  if (!first || !last) return fail({ code: 'circuit-untraced', circuit: circuit.id });
  const endAt = (nodeId: NodeId): CircuitEnd =>
    circuit.ends.find((end) => end.nodeId === nodeId) ?? { nodeId, kind: 'other' };
  const nodes = new Set(passed);
  const draft = draftOf(map);
  draft.put({
    ...circuit,
    path: [...input.path],
    pins: circuit.pins.filter((pin) => nodes.has(pin.nodeId)),
    ends: [endAt(first), endAt(last)],
  });
  return draft.finish();
}
