import { bareState, withEndsApart } from '#core/circuit/circuit-network.ts';
import type { PlacedLook } from '#core/job/dig-looks.ts';
import { testMinutes } from '#core/job/test-minutes-table.ts';
import { offClosure } from '#core/map/panel-order.ts';
import type { NodeId, PanelId } from '#core/quantity/id.ts';
import type { DrawnCar } from './drawn-car.ts';
import type { FaultyWire } from './faulty-wire.ts';
import { orderedSearch, type SearchOutcome } from './metered-search.ts';
import { ruleKeys } from './rule-keys.ts';
import { simpleOrder } from './simple-orders.ts';

/** Current of a drop test, as the tool itself would ask for. */
const dropAmps = 0.1;

/**
 * A technician with the same meter and without the tool: one test from both ends (a drop where a short may
 * be, capacitance where the report says open), its place read as a plain proportion of the drawn length,
 * then outwards from there; cheapest panel first where no test gives a place. Takes all in view or only
 * what was chosen.
 */
export function searchByProportion(
  car: DrawnCar,
  wire: FaultyWire,
  looks: readonly PlacedLook[],
  offAtStart: readonly PanelId[],
  notices: readonly boolean[],
  looksAtAll: boolean,
): SearchOutcome {
  const { map, circuit, line, failureType } = car;
  const [first, second] = circuit.ends.map(({ nodeId }) => nodeId);
  if (!first || !second) throw new Error('both ends are drawn');
  const isOpen = failureType === 'circuit-open';
  const isTried = isOpen || failureType === 'circuit-short-to-ground' || failureType === 'not-known';
  const panelIds = [first, second].flatMap((id) => map.nodes.get(id)?.panelIds ?? []);
  const reached = isTried ? offClosure(map.panels, panelIds) : new Set<PanelId>();
  let spent = 0;
  if (isTried) spent = isOpen ? testMinutes.capacitance : testMinutes['drop-both-ends'];
  for (const id of reached) if (!offAtStart.includes(id)) spent += map.panels.get(id)?.minutesOff ?? 0;
  const share = isTried ? shareFromFirst(car, wire, first, second, isOpen) : null;
  const panels = new Map(
    [...map.panels].map(([id, panel]) => [
      id,
      reached.has(id) || offAtStart.includes(id) ? { ...panel, minutesOff: 0 } : panel,
    ]),
  );
  const atMm = share === null ? null : share * line.lengthMm;
  const byPrice = ruleKeys(car)['cheapest panel first'];
  const steps = simpleOrder(
    looks,
    panels,
    (place) => (atMm === null ? byPrice(place) : Math.abs((place.look.fromMm + place.look.toMm) / 2 - atMm)),
    looksAtAll,
  );
  const found = orderedSearch(steps, wire.trueMm, notices);
  return { ...found, minutes: found.minutes + spent };
}

/** Where the fault lies as a share of the wire from its first end; null where the meter shows no two figures. */
function shareFromFirst(
  car: DrawnCar,
  wire: FaultyWire,
  first: NodeId,
  second: NodeId,
  isOpen: boolean,
): number | null {
  const state = withEndsApart(bareState, car.circuit.ends);
  const on = (nodeId: NodeId) => ({ on: 'wire', nodeId }) as const;
  const drop = (driven: NodeId, sensed: NodeId): number | null => {
    const reading = { test: 'drop', driven: on(driven), sensed: on(sensed), currentA: dropAmps } as const;
    return wire.millivolts({ ...reading, millivolts: 1 }, state, dropAmps);
  };
  const one = isOpen ? wire.picofarads(on(first), state) : drop(first, second);
  const other = isOpen ? wire.picofarads(on(second), state) : drop(second, first);
  return one === null || other === null || one + other <= 0 ? null : one / (one + other);
}
