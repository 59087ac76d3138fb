import type { CircuitLine } from '#core/circuit/circuit-line.ts';
import type { JobEntry } from '#core/job/job-document.ts';
import { pathStretches } from '#core/job/path-stretches.ts';
import { planWishes } from '#core/job/plan-wishes.ts';
import { panelsOff } from '#core/job/standing-entries.ts';
import type { PanelWish } from '#core/job/wish-entries.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { offClosure } from '#core/map/panel-order.ts';
import type { Panel } from '#core/map/records.ts';
import type { PanelId } from '#core/quantity/id.ts';
import type { NewEntry } from '../../../session/job-session.ts';

/** How a panel stands for the plan: off the car, or what is wished of it. */
export type PanelStanding = 'off' | PanelWish;

/** Panels over the circuit and its plugs, with those that must come off before them, in the map's order. */
export function panelsInTheWay(map: MapDocument, line: CircuitLine): readonly Panel[] {
  const wanted = [
    ...pathStretches(line).flatMap(({ panelIds }) => panelIds),
    ...line.nodes.flatMap(({ nodeId }) => map.nodes.get(nodeId)?.panelIds ?? []),
  ];
  return [...offClosure(map.panels, wanted)]
    .flatMap((id) => map.panels.get(id) ?? [])
    .sort((a, b) => a.order - b.order || (a.id < b.id ? -1 : 1));
}

/** Pairs of panels that hide the same places: one of them may be enough. */
export function pairsOverOnePlace(
  map: MapDocument,
  line: CircuitLine,
): readonly (readonly [PanelId, PanelId])[] {
  const pairs = new Map<string, readonly [PanelId, PanelId]>();
  for (const { panelIds } of pathStretches(line)) {
    for (const one of panelIds) {
      for (const other of panelIds) {
        if (one >= other) continue;
        // One that needs the other off first is no other way in.
        if (offClosure(map.panels, [one]).has(other) || offClosure(map.panels, [other]).has(one)) continue;
        pairs.set(`${one} ${other}`, [one, other]);
      }
    }
  }
  return [...pairs.values()];
}

export function panelStanding(standing: readonly JobEntry[], panelId: PanelId): PanelStanding {
  if (panelsOff(standing).has(panelId)) return 'off';
  const { notToday, comingOutAnyway } = planWishes(standing);
  if (notToday.includes(panelId)) return 'stays-on';
  return comingOutAnyway.includes(panelId) ? 'out-anyway' : 'as-planned';
}

/** What to enter so that a panel stands in another way; nothing when it does already. */
export function entriesFor(panelId: PanelId, from: PanelStanding, to: PanelStanding): readonly NewEntry[] {
  if (from === to) return [];
  if (to === 'off') return [{ type: 'panel-off', panelId }];
  const backOn: NewEntry[] = from === 'off' ? [{ type: 'panel-on', panelId }] : [];
  return [...backOn, { type: 'panel-wish', panelId, wish: to }];
}
