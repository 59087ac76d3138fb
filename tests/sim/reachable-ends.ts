import type { Panel } from '#core/map/records.ts';
import type { Chance } from '#core/quantity/chance.ts';
import { newId } from '#core/quantity/id.ts';
import type { DrawnCar } from './drawn-car.ts';

/**
 * The same car where the circuit's two ends can be got at without the trim above them: the control unit
 * behind a cover of 3 to 10 minutes, the part at the other end from outside or behind one of 1 to 6 (common
 * practice, no source). The wire between lies hidden as before.
 */
export function withReachableEnds(car: DrawnCar, chance: Chance): DrawnCar {
  const nodes = new Map(car.map.nodes);
  const panels = new Map(car.map.panels);
  for (const [i, { nodeId }] of car.circuit.ends.entries()) {
    const node = nodeId === null ? undefined : nodes.get(nodeId);
    if (!node) continue;
    const [least, most] = i === 0 ? [3, 10] : [1, 6];
    const minutesOff = Math.round(least + (most - least) * chance());
    const cover: Panel = {
      id: newId('panel', chance),
      name: `cover over ${node.name}`,
      kind: 'other',
      area: [],
      minutesOff,
      minutesOn: minutesOff,
      offFirst: [],
      cautions: [],
      note: '',
      order: panels.size,
    };
    panels.set(cover.id, cover);
    nodes.set(node.id, { ...node, panelIds: [cover.id] });
  }
  return { ...car, map: { ...car.map, nodes, panels } };
}
