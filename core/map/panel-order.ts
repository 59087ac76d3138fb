import { compareText } from '../quantity/compare-text.ts';
import type { PanelId } from '../quantity/id.ts';
import type { Panel } from './records.ts';

type Panels = ReadonlyMap<PanelId, Panel>;

const byOrder = (panels: Panels) => (a: PanelId, b: PanelId) =>
  (panels.get(a)?.order ?? 0) - (panels.get(b)?.order ?? 0) || compareText(a, b);

/**
 * Everything that must come off for some panels to be off: themselves and, through `offFirst`, whatever
 * goes before them. Panels that are not on the map are left out. Ends even where the order is a ring.
 * @example
 * [...offClosure(sample.map.panels, ['panel:seat'])].sort() // => ['panel:seat', 'panel:tread']
 */
export function offClosure(panels: Panels, wanted: Iterable<PanelId>): ReadonlySet<PanelId> {
  const closure = new Set<PanelId>();
  const waiting = [...wanted];
  for (let id = waiting.pop(); id !== undefined; id = waiting.pop()) {
    const panel = panels.get(id);
    if (!panel || closure.has(id)) continue;
    closure.add(id);
    waiting.push(...panel.offFirst);
  }
  return closure;
}

/**
 * Some panels in an order in which they can come off; free choices go by the panels' own `order`, then by id.
 * `offFirst` names outside the set count as off already. Null where the order is a ring. O(n^2) in the
 * panels asked for, of which a car has some dozens.
 * @example
 * takeOffOrder(sample.map.panels, ['panel:seat', 'panel:tread']) // => ['panel:tread', 'panel:seat']
 */
export function takeOffOrder(panels: Panels, wanted: Iterable<PanelId>): readonly PanelId[] | null {
  const left = new Set(wanted);
  const order: PanelId[] = [];
  const sorted = [...left].sort(byOrder(panels));
  while (left.size > 0) {
    const next = sorted.find(
      (id) => left.has(id) && (panels.get(id)?.offFirst ?? []).every((first) => !left.has(first)),
    );
    if (next === undefined) return null;
    left.delete(next);
    order.push(next);
  }
  return order;
}

/**
 * One ring in the order of coming off, each panel after the one it waits for and the first given once;
 * null when there is none. The same map always gives the same ring. O(panels + order lines).
 * @example
 * panelCycle(sample.map.panels) // => null
 */
export function panelCycle(panels: Panels): readonly PanelId[] | null {
  const waitsFor = new Map<PanelId, number>();
  const holdsUp = new Map<PanelId, PanelId[]>();
  const free: PanelId[] = [];
  for (const panel of panels.values()) {
    const firsts = new Set(panel.offFirst.filter((id) => panels.has(id)));
    waitsFor.set(panel.id, firsts.size);
    if (firsts.size === 0) free.push(panel.id);
    for (const first of firsts) {
      const held = holdsUp.get(first);
      if (held) held.push(panel.id);
      else holdsUp.set(first, [panel.id]);
    }
  }
  for (let id = free.pop(); id !== undefined; id = free.pop()) {
    waitsFor.delete(id);
    for (const held of holdsUp.get(id) ?? []) {
      const left = (waitsFor.get(held) ?? 0) - 1;
      waitsFor.set(held, left);
      if (left === 0) free.push(held);
    }
  }
  // Whatever is left waits for something that is left too, so walking back must come round.
  let at = [...waitsFor.keys()].sort(compareText)[0];
  const way: PanelId[] = [];
  const met = new Map<PanelId, number>();
  while (at !== undefined && !met.has(at)) {
    met.set(at, way.length);
    way.push(at);
    at = [...(panels.get(at)?.offFirst ?? [])].sort(compareText).find((first) => waitsFor.has(first));
  }
  return at === undefined ? null : way.slice(met.get(at)).reverse();
}
