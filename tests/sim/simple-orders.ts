import type { Look } from '#core/dig/look.ts';
import { offClosure, takeOffOrder } from '#core/map/panel-order.ts';
import type { Panel } from '#core/map/records.ts';
import type { PanelId } from '#core/quantity/id.ts';

/** One step of a search: minutes spent, and what is then looked at. */
export interface SearchStep<L extends Look = Look> {
  readonly minutes: number;
  readonly look: L;
  /** Number of the opening it belongs to. */
  readonly opening: number;
}

/** What is left on a place when the next one is chosen. */
export interface NextPlace<L extends Look> {
  readonly look: L;
  /** Minutes for what must still come off to see it. */
  readonly trimMinutes: number;
}

/**
 * The search of a technician who goes by one simple rule: of the places not yet looked at the one with
 * the least `keyOf` is opened next. `looksAtAll` takes every place in view before the next panel comes
 * off; else only the chosen one.
 */
export function simpleOrder<L extends Look>(
  looks: readonly L[],
  panels: ReadonlyMap<PanelId, Panel>,
  keyOf: (place: NextPlace<L>) => number,
  looksAtAll: boolean,
): SearchStep<L>[] {
  let stillOn = new Map(panels);
  const left = new Set(looks);
  const steps: SearchStep<L>[] = [];
  const trimFor = (look: L): PanelId[] => [...offClosure(stillOn, look.panelIds)];
  const minutesOf = (ids: readonly PanelId[]): number =>
    ids.reduce((sum, id) => sum + (panels.get(id)?.minutesOff ?? 0), 0);
  for (let opening = 0; left.size > 0; opening++) {
    const places = [...left].map((look) => ({ look, trimMinutes: minutesOf(trimFor(look)) }));
    const next = places.reduce((a, b) => (keyOf(b) < keyOf(a) ? b : a));
    const off = takeOffOrder(panels, trimFor(next.look)) ?? [];
    let setup = minutesOf(off);
    stillOn = new Map([...stillOn].filter(([id]) => !off.includes(id)));
    const inView = looksAtAll ? [...left].filter((look) => trimFor(look).length === 0) : [next.look];
    inView.sort(
      (a, b) =>
        keyOf({ look: a, trimMinutes: 0 }) - keyOf({ look: b, trimMinutes: 0 }) || (a.id < b.id ? -1 : 1),
    );
    for (const look of inView) {
      steps.push({ minutes: setup + look.minutes, look, opening });
      setup = 0;
      left.delete(look);
    }
  }
  return steps;
}
