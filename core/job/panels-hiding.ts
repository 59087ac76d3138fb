import type { NodeId, PanelId } from '../quantity/id.ts';
import { placesInReach } from './places-in-reach.ts';
import type { TestGrounds } from './possible-test.ts';
import { panelsOff } from './standing-entries.ts';

/**
 * Panels over the places a test needs; none over those that can be got at as the car stands.
 * @example
 * panelsHiding({ map: sample.map, line: sample.line, cells: layHypotheses(new Float64Array([0, 1500]), []), cellProbability: Float64Array.of(1), stretches: [], entries: [], medianMm: 700 }, ['node:west']) // => []
 */
export function panelsHiding(grounds: TestGrounds, nodeIds: readonly NodeId[]): PanelId[] {
  const { map, entries } = grounds;
  const inReach = placesInReach(map, entries, grounds.off ?? panelsOff(entries));
  return nodeIds.flatMap((id) => (inReach(id) ? [] : (map.nodes.get(id)?.panelIds ?? [])));
}
