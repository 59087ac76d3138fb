import { allNodes, type CircuitLine } from '#core/circuit/circuit-line.ts';
import type { CarState, Probe } from '#core/job/reading.ts';
import type { NodeKind } from '#core/map/kinds.ts';
import { isLookOnly } from '#core/map/kinds.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { CircuitId, NodeId } from '#core/quantity/id.ts';

/** Places where a lead finds metal without cutting anything. */
const reachable: ReadonlySet<NodeKind> = new Set([
  'inline-connector',
  'splice',
  'ground-point',
  'module',
  'switch',
  'sensor',
  'load',
  'fuse-box',
  'loose-end',
]);

/** Kinds that can be pulled off or have their fuse taken out. */
const pluggable: ReadonlySet<NodeKind> = new Set([
  'inline-connector',
  'module',
  'switch',
  'sensor',
  'load',
  'fuse-box',
]);

/** One place to put a lead: on which wire, and on which half of a plug that is apart. */
export interface LeadPlace {
  readonly key: string;
  readonly probe: Probe;
}

/** The places for leads on the searched wire, on the car, and on one neighbouring wire. */
export interface LeadGroup {
  /** Null: body and battery. */
  readonly circuitId: CircuitId | null;
  readonly places: readonly LeadPlace[];
}

/** A lead's place as text, for lists to choose from; the searched circuit's own id is left out. */
export function leadKey(probe: Probe, ownId: CircuitId): string {
  if (probe.on !== 'wire') return probe.on;
  const other = probe.circuitId === undefined || probe.circuitId === ownId ? '' : ` ${probe.circuitId}`;
  return `${probe.nodeId}${probe.side ? ` ${probe.side}` : ''}${other}`;
}

/** Every place a lead may sit as the car stands: the circuit's nodes in order, body, battery, then wires beside it. */
export function leadGroups(
  map: MapDocument,
  line: CircuitLine,
  state: CarState,
  failing: readonly CircuitId[],
): readonly LeadGroup[] {
  const ownId = line.circuit.id;
  const place = (probe: Probe): LeadPlace => ({ key: leadKey(probe, ownId), probe });
  const own = line.nodes.flatMap(({ nodeId }, index): readonly LeadPlace[] => {
    const isEnd = index === 0 || index === line.nodes.length - 1;
    const node = map.nodes.get(nodeId);
    if (!node || !(isEnd || reachable.has(node.kind))) return [];
    // At an end of the wire only one half of the plug carries it.
    if (isEnd || !state.apartNodeIds.includes(nodeId)) return [place({ on: 'wire', nodeId })];
    return (['first-end', 'second-end'] as const).map((side) => place({ on: 'wire', nodeId, side }));
  });
  return [
    { circuitId: ownId, places: own },
    { circuitId: null, places: [place({ on: 'body' }), place({ on: 'battery-positive' })] },
    ...wiresBeside(map, line, failing).map(({ circuitId, nodeIds }) => ({
      circuitId,
      places: nodeIds.map((nodeId) => place({ on: 'wire', nodeId, circuitId })),
    })),
  ];
}

/** Circuits that share a run with the searched one and may be measured, the failing ones first. */
function wiresBeside(
  map: MapDocument,
  line: CircuitLine,
  failing: readonly CircuitId[],
): readonly { readonly circuitId: CircuitId; readonly nodeIds: readonly NodeId[] }[] {
  const runs = new Set(line.spans.map((span) => span.segment.id));
  return [...map.circuits.values()]
    .filter(({ id, duty, path }) => {
      return id !== line.circuit.id && !isLookOnly(duty) && path.some((step) => runs.has(step.segmentId));
    })
    .sort((a, b) => Number(failing.includes(b.id)) - Number(failing.includes(a.id)) || a.order - b.order)
    .map((circuit) => {
      const nodeIds = new Set<NodeId>();
      for (const step of circuit.path) {
        const run = map.segments.get(step.segmentId);
        if (!run) continue;
        const [from, to] = step.reversed ? [run.toNodeId, run.fromNodeId] : [run.fromNodeId, run.toNodeId];
        nodeIds.add(from).add(to);
      }
      const reached = [...nodeIds].filter((id) => reachable.has(map.nodes.get(id)?.kind ?? 'branch'));
      return { circuitId: circuit.id, nodeIds: reached };
    })
    .filter(({ nodeIds }) => nodeIds.length > 0);
}

/** Ends of the circuit where a fuse feeds it: there the fuse is out, no plug is apart. */
export function fuseNodes(line: CircuitLine | null): ReadonlySet<NodeId> {
  const ends = line?.circuit.ends ?? [];
  return new Set(ends.flatMap(({ kind, nodeId }) => (kind === 'fused-supply' && nodeId ? [nodeId] : [])));
}

/** What can be pulled apart on the circuit, in its order, and whatever else is noted as apart already. */
export function plugsOf(map: MapDocument, line: CircuitLine, state: CarState): readonly NodeId[] {
  const own = allNodes(line)
    .map(({ nodeId }) => nodeId)
    .filter((id) => pluggable.has(map.nodes.get(id)?.kind ?? 'branch'));
  return [...new Set([...own, ...state.apartNodeIds])];
}

/** A lead kept to a place that is there: a plug pushed together again has one place, one pulled apart two. */
export function settleLead(probe: Probe, groups: readonly LeadGroup[], ownId: CircuitId): Probe {
  const key = leadKey(probe, ownId);
  const places = groups.flatMap((group) => group.places);
  if (probe.on !== 'wire' || places.some((place) => place.key === key)) return probe;
  const same = places.find(
    (place) =>
      place.probe.on === 'wire' && place.probe.nodeId === probe.nodeId && sameWire(place.probe, probe),
  );
  return same?.probe ?? probe;
}

const sameWire = (a: Probe & { on: 'wire' }, b: Probe & { on: 'wire' }): boolean =>
  a.circuitId === b.circuitId;
