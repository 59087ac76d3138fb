import { bareState, withEndsApart } from '#core/circuit/circuit-network.ts';
import type { JobEntry } from '#core/job/job-document.ts';
import type { PanelId } from '#core/quantity/id.ts';
import type { DrawnCar } from './drawn-car.ts';
import type { FaultyWire } from './faulty-wire.ts';
import { type NewEntry, numberedEntry, startEntries } from './searched-job.ts';

/** What everybody has done and learned before the search begins. */
export interface SearchStart {
  readonly entries: readonly JobEntry[];
  readonly off: readonly PanelId[];
}

/**
 * The usual start: a plug parted where one lies open, nothing off.
 */
export const plainStart = (car: DrawnCar): SearchStart => ({ entries: startEntries(car), off: [] });

/**
 * The start of a search whose parts were cleared first, as the trade splits a circuit before it looks along
 * the wire (common practice, no source): the covers over both ends are off, both are unplugged, and the
 * wire by itself was measured to the body and from end to end with the hand meter.
 */
export function clearedEnds(car: DrawnCar, wire: FaultyWire): SearchStart {
  const [first, second] = car.circuit.ends.map(({ nodeId }) => nodeId);
  if (!first || !second) throw new Error('both ends are drawn');
  const off = [first, second].flatMap((nodeId) => car.map.nodes.get(nodeId)?.panelIds ?? []);
  const apart = withEndsApart(bareState, car.circuit.ends);
  const state = { ...apart, apartNodeIds: [...apart.apartNodeIds] };
  const ohms = (to: { on: 'body' } | { on: 'wire'; nodeId: typeof second }): NewEntry => {
    const reading = { test: 'ohms', from: { on: 'wire', nodeId: first }, to, ohms: 1 } as const;
    return { type: 'reading', reading: { ...reading, ohms: wire.ohms(reading, state) }, state, note: '' };
  };
  const entries: NewEntry[] = [
    ...startEntries(car),
    ...off.map((panelId) => ({ type: 'panel-off', panelId }) as const),
    ohms({ on: 'body' }),
    ohms({ on: 'wire', nodeId: second }),
  ];
  return { entries: entries.map(numberedEntry), off };
}
