import { offClosure } from '../map/panel-order.ts';
import type { Panel } from '../map/records.ts';
import type { PanelId } from '../quantity/id.ts';
import type { Look } from './look.ts';
import type { LookWay } from './yard.ts';

/** Looks that can be gone about in the same several ways, and so are all gone about in the same one. */
export interface WayChoice<L extends Look> {
  readonly looks: readonly L[];
  readonly ways: readonly LookWay[];
}

/** What can be looked at, in which ways, and what cannot be reached. */
export interface LookWays<L extends Look> {
  readonly reachable: readonly L[];
  readonly leftOut: readonly L[];
  readonly choices: readonly WayChoice<L>[];
}

/**
 * The ways of going about each look when some panels stay on: each access, with and without a half view
 * before it; the half view alone where every access is barred. Looks with the same ways are one choice:
 * once one of them has been reached, all of them have. A look with one way makes no choice.
 * @example
 * lookWays([{ id: 'a', panelIds: ['panel:seat'], probability: 1, quality: 1, minutes: 2 }], sample.map.panels, new Set(), new Set(['panel:tread'])).leftOut.length // => 1
 */
export function lookWays<L extends Look>(
  looks: readonly L[],
  panels: ReadonlyMap<PanelId, Panel>,
  off: ReadonlySet<PanelId>,
  barred: ReadonlySet<PanelId>,
): LookWays<L> {
  const stillOn = new Map([...panels].filter(([id]) => !off.has(id)));
  const isFree = (panelIds: readonly PanelId[]): boolean => {
    if (barred.size === 0) return true;
    for (const id of offClosure(stillOn, panelIds)) if (barred.has(id)) return false;
    return true;
  };
  const byWays = new Map<string, { looks: L[]; ways: LookWay[] }>();
  const reachable: L[] = [];
  const leftOut: L[] = [];
  for (const look of looks) {
    if (barred.size === 0 && !look.otherAccess && !look.halfView) {
      reachable.push(look);
      continue;
    }
    const key = JSON.stringify([look.panelIds, look.otherAccess, look.halfView?.panelIds]);
    const known = byWays.get(key);
    const ways = known?.ways ?? waysOf(look, isFree);
    if (known) known.looks.push(look);
    else byWays.set(key, { looks: [look], ways });
    (ways.length > 0 ? reachable : leftOut).push(look);
  }
  return { reachable, leftOut, choices: [...byWays.values()].filter(({ ways }) => ways.length > 0) };
}

function waysOf(look: Look, isFree: (panelIds: readonly PanelId[]) => boolean): LookWay[] {
  const accesses = [look.panelIds, ...(look.otherAccess ?? [])].filter(isFree);
  const half = look.halfView && isFree(look.halfView.panelIds);
  if (accesses.length === 0) return half ? [{ panelIds: null, halfView: true }] : [];
  return accesses.flatMap((panelIds) => [
    { panelIds, halfView: false },
    ...(half ? [{ panelIds, halfView: true }] : []),
  ]);
}

/**
 * A way that asks for no more than any of a look's ways does, so that an order found with it costs no
 * more than the best with any of them: only the panels every access needs, and the half view for no
 * minutes. Serves as a lower bound.
 * @example
 * easiestWay([{ panelIds: ['panel:seat'], halfView: false }, { panelIds: ['panel:tread'], halfView: false }], sample.map.panels) // => { panelIds: ['panel:tread'], halfView: false }
 */
export function easiestWay(ways: readonly LookWay[], panels: ReadonlyMap<PanelId, Panel>): LookWay {
  const accesses = ways.flatMap(({ panelIds }) => (panelIds ? [offClosure(panels, panelIds)] : []));
  const [first, ...others] = accesses;
  const panelIds = first ? [...first].filter((id) => others.every((other) => other.has(id))) : null;
  return { panelIds, halfView: ways.some(({ halfView }) => halfView) };
}
