import { takeOffOrder } from '../map/panel-order.ts';
import type { Panel } from '../map/records.ts';
import type { PanelId } from '../quantity/id.ts';
import type { Look } from './look.ts';
import { type LookGroup, seenByHalf, type View, type Yard, type YardJob } from './yard.ts';

/** One opening of the plan: what comes off, then what is looked at. */
export interface DigOpening<L extends Look = Look> {
  readonly takeOff: readonly PanelId[];
  readonly looks: readonly L[];
  /** These places were looked at before in this plan; now for what was overlooked. */
  readonly again: boolean;
  /** Looked at past a panel that stays on; the full look comes later. */
  readonly half?: true;
  /** Minutes of this opening: taking off and looking. */
  readonly minutes: number;
  /** Chance that the fault is seen in this opening. */
  readonly seen: number;
}

/** Openings with what they come to. */
export interface CutOpenings<L extends Look> {
  readonly openings: readonly DigOpening<L>[];
  /** Sum over looks of chance seen there times minutes until then, without and with putting back. */
  readonly cost: number;
  readonly totalCost: number;
  readonly seen: number;
}

/** Minutes a panel counts for, off and back on. */
export interface PanelMinutes {
  readonly off: (panel: Panel) => number;
  readonly on: (panel: Panel) => number;
}

/**
 * An order of jobs told as openings: a new one begins where panels come off, another group is looked
 * at, or the view changes. A half view that comes after its full look is dropped. Job numbers from
 * `yard.jobs.length` on open a group.
 * @example
 * cutOpenings(layYard([], sample.map.panels, new Set()), [], sample.map.panels, { off: () => 0, on: () => 0 }).openings // => []
 */
export function cutOpenings<L extends Look>(
  yard: Yard<L>,
  jobs: readonly number[],
  panels: ReadonlyMap<PanelId, Panel>,
  minutesOf: PanelMinutes,
): CutOpenings<L> {
  const off = new Set<number>();
  const fully = new Set<L>();
  const halfway = new Set<L>();
  const openings: Growing<L>[] = [];
  let last: Growing<L> | null = null;
  let lastGroup = -1;
  let lastView: View | null = null;
  let takeOff = nothing;
  let setup = 0;
  let minutes = 0;
  let refit = 0;
  let cost = 0;
  let totalCost = 0;
  let seenInAll = 0;
  for (const number of jobs) {
    if (number >= yard.jobs.length) {
      const wanted = (yard.groups[number - yard.jobs.length] as LookGroup).panels.filter((p) => !off.has(p));
      const ids = wanted.map((panel) => (yard.panels[panel] as { id: PanelId }).id);
      for (const panel of wanted) off.add(panel);
      for (const id of ids) {
        setup += minutesOf.off(panels.get(id) as Panel);
        refit += minutesOf.on(panels.get(id) as Panel);
      }
      takeOff = [...takeOff, ...(takeOffOrder(panels, ids) ?? ids)];
      continue;
    }
    const { look, view, group, weight } = yard.jobs[number] as YardJob<L>;
    let seen = weight;
    let spent = setup + look.minutes;
    if (look.halfView) {
      if (view === 'half' && fully.has(look)) continue;
      seen = seenBy(look, view, halfway.has(look));
      (view === 'half' ? halfway : fully).add(look);
      if (view === 'half') spent = setup + look.halfView.minutes;
    }
    setup = 0;
    minutes += spent;
    cost += seen * minutes;
    totalCost += seen * (minutes + refit);
    seenInAll += seen;
    if (last && takeOff.length === 0 && lastGroup === group && lastView === view) {
      last.looks.push(look);
      last.minutes += spent;
      last.seen += seen;
      continue;
    }
    last = { takeOff, looks: [look], again: view === 'again', minutes: spent, seen };
    if (view === 'half') last.half = true;
    openings.push(last);
    lastGroup = group;
    lastView = view;
    takeOff = nothing;
  }
  return { openings, cost, totalCost, seen: seenInAll };
}

/** Shared by the thousands of openings for which nothing comes off. */
const nothing: readonly PanelId[] = [];

/** An opening while looks are still put to it. */
type Growing<L extends Look> = {
  -readonly [K in keyof DigOpening<L>]: K extends 'looks' ? L[] : DigOpening<L>[K];
};

function seenBy(look: Look, view: View, wasHalfSeen: boolean): number {
  const half = look.halfView ? seenByHalf(look, look.halfView) : 0;
  if (view === 'half') return half;
  const full = look.probability * look.quality;
  return view === 'again' ? full * (1 - look.quality) : full - (wasHalfSeen ? half : 0);
}
