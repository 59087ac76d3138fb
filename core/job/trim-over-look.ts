import type { CircuitLine } from '../circuit/circuit-line.ts';
import { coveredShare, type StationRange } from '../locate/station-ranges.ts';
import type { MapDocument } from '../map/map-document.ts';
import { offClosure, takeOffOrder } from '../map/panel-order.ts';
import type { PanelId } from '../quantity/id.ts';
import type { JobEntry } from './job-document.ts';
import { pathStretches } from './path-stretches.ts';
import { planWishes } from './plan-wishes.ts';
import { panelsOff } from './standing-entries.ts';

/** A panel that hides less of a look than this may have stayed on (judgement). */
const leastHidden = 0.5;

/**
 * The trim a clear look at pieces of the circuit (mm from its first end) cannot have been had with: panels
 * still on that hide at least half of it, and what comes off before them, in the order they come off. Of two
 * panels that serve the same look, none where one is off.
 * @example
 * trimOverLook(sample.map, sample.line, [{ fromMm: 650, toMm: 1000 }], []) // => ['panel:tread', 'panel:seat']
 */
export function trimOverLook(
  map: MapDocument,
  line: CircuitLine,
  pieces: readonly StationRange[],
  standing: readonly JobEntry[],
): readonly PanelId[] {
  const off = panelsOff(standing);
  const { eitherPanels } = planWishes(standing);
  const hiddenMm = new Map<PanelId, number>();
  let wholeMm = 0;
  for (const { fromMm, toMm, panelIds } of pathStretches(line)) {
    const mm = coveredShare(pieces, fromMm, toMm) * (toMm - fromMm);
    wholeMm += mm;
    for (const id of panelIds) hiddenMm.set(id, (hiddenMm.get(id) ?? 0) + mm);
  }
  const isServed = (id: PanelId): boolean =>
    off.has(id) || eitherPanels.some((pair) => pair.includes(id) && pair.some((each) => off.has(each)));
  const over = [...hiddenMm]
    .filter(([id, mm]) => mm > 0 && mm >= leastHidden * wholeMm && !isServed(id))
    .map(([id]) => id);
  const whole = [...offClosure(map.panels, over)].filter((id) => !off.has(id));
  return takeOffOrder(map.panels, whole) ?? whole;
}
