import { offClosure } from '../map/panel-order.ts';
import type { Panel } from '../map/records.ts';
import { compareText } from '../quantity/compare-text.ts';
import type { PanelId } from '../quantity/id.ts';
import { type Block, compareWorth, type JobRow, jobBlock, jobRow } from './block.ts';
import type { HalfView, Look } from './look.ts';

/** One panel still on, numbered. */
export interface YardPanel {
  readonly id: PanelId;
  readonly minutes: number;
}

/** Looks that need exactly the same panels off. */
export interface LookGroup extends JobRow {
  /** Numbers of the panels still on that must come off, closed under what those need. */
  readonly panels: readonly number[];
}

/** The whole job in numbers: panels still on, and looks collapsed by what they need. */
export interface Yard<L extends Look = Look> {
  readonly panels: readonly YardPanel[];
  readonly groups: readonly LookGroup[];
  /** What each job number from a block means. */
  readonly jobs: readonly YardJob<L>[];
  /** Sum of all weights: the chance that the fault is seen in the end. */
  readonly weight: number;
}

/** One going to one place. */
export interface YardJob<L extends Look = Look> {
  readonly look: L;
  readonly view: View;
  /** Number of the group it belongs to. */
  readonly group: number;
  readonly weight: number;
  readonly minutes: number;
}

/** The full look, a return for what it overlooked, or a look past a panel that stays on. */
export type View = 'full' | 'again' | 'half';

/** How one place is gone about: the way in, and whether a half view is taken first. */
export interface LookWay {
  /** Panels of the access taken; null where every access is barred and only the half view is left. */
  readonly panelIds: readonly PanelId[] | null;
  readonly halfView: boolean;
}

/** What a yard may be laid with. */
export interface YardWishes<L extends Look> {
  /** Minutes a panel counts for; its minutes off when absent. */
  readonly minutesOf?: (panel: Panel) => number;
  /** How each look is gone about; its own panels and no half view when absent. */
  readonly wayOf?: (look: L) => LookWay | undefined;
  /** Half views take no minutes and need no panel the access does not; only for a lower bound. */
  readonly freeHalfViews?: boolean;
}

/** Chance under which a look is not worth a line (rounding, not judgement). */
const negligible = 1e-9;

/**
 * Collapses looks by the closed set of panels they still need. Each place has the full look of weight
 * p q, and one return of weight p q (1 - q) for what was overlooked; where a half view of quality h is
 * taken as well, p h of the full look's weight is its. Panels already off cost nothing and are left
 * out. Looks marked `once` have no return. O(looks log looks + looks x panels).
 * @example
 * layYard([], sample.map.panels, new Set()).groups // => []
 */
export function layYard<L extends Look>(
  looks: readonly L[],
  panels: ReadonlyMap<PanelId, Panel>,
  off: ReadonlySet<PanelId>,
  wishes: YardWishes<L> = {},
): Yard<L> {
  const numbering = new Numbering(panels, off, wishes.minutesOf ?? (({ minutesOff }) => minutesOff));
  const groups: { panels: readonly number[]; looks: Block[] }[] = [];
  const groupOf = new Map<Need, number>();
  const jobs: YardJob<L>[] = [];
  const add = (look: L, view: View, panelIds: readonly PanelId[], weight: number, minutes: number): void => {
    if (weight < negligible) return;
    const need = numbering.need(panelIds);
    let group = groupOf.get(need);
    if (group === undefined) {
      group = groups.length;
      groupOf.set(need, group);
      groups.push({ panels: need.panels, looks: [] });
    }
    (groups[group] as { looks: Block[] }).looks.push(jobBlock(jobs.length, weight, minutes));
    jobs.push({ look, view, group, weight, minutes });
  };
  for (const look of [...looks].sort((a, b) => compareText(a.id, b.id))) {
    const seen = look.probability * look.quality;
    if (seen < negligible) continue;
    const way = wishes.wayOf?.(look) ?? { panelIds: look.panelIds, halfView: false };
    const half = way.halfView && look.halfView ? seenByHalf(look, look.halfView) : 0;
    if (half > 0 && look.halfView) {
      const { panelIds, minutes } = look.halfView;
      const needed = wishes.freeHalfViews ? numbering.common(panelIds, way.panelIds ?? panelIds) : panelIds;
      add(look, 'half', needed, half, wishes.freeHalfViews ? 0 : minutes);
    }
    if (!way.panelIds) continue;
    add(look, 'full', way.panelIds, seen - half, look.minutes);
    if (!look.once) add(look, 'again', way.panelIds, seen * (1 - look.quality), look.minutes);
  }
  let weight = 0;
  for (const job of jobs) weight += job.weight;
  return { panels: numbering.panels, groups: groups.map(finishedGroup), jobs, weight };
}

/**
 * Chance that a half view shows the fault: it never shows more than the full look would.
 * @example
 * seenByHalf({ id: 'a', panelIds: [], probability: 0.5, quality: 0.9, minutes: 1 }, { panelIds: [], quality: 0.4, minutes: 1 }) // => 0.2
 */
export function seenByHalf(look: Look, half: HalfView): number {
  return look.probability * Math.min(look.quality, half.quality);
}

function finishedGroup({ panels, looks }: { panels: readonly number[]; looks: Block[] }): LookGroup {
  looks.sort((a, b) => -compareWorth(a, b) || a.job - b.job);
  return { panels, ...jobRow(looks) };
}

/** Numbers of panels still on, closed under what those need. */
interface Need {
  readonly panels: readonly number[];
}

/** Panels still on get numbers as looks ask for them; each set asked for is closed once. */
class Numbering {
  readonly panels: YardPanel[] = [];
  readonly #stillOn: ReadonlyMap<PanelId, Panel>;
  readonly #minutesOf: (panel: Panel) => number;
  readonly #numbers = new Map<PanelId, number>();
  /** What was asked for, and what each closed set came to. */
  readonly #asked = new Map<string, Need>();
  readonly #needs = new Map<string, Need>();
  /** A place is mostly asked for twice in a row: for the full look and for the return. */
  #last: { readonly panelIds: readonly PanelId[]; readonly need: Need } | null = null;

  constructor(
    panels: ReadonlyMap<PanelId, Panel>,
    off: ReadonlySet<PanelId>,
    minutesOf: (panel: Panel) => number,
  ) {
    this.#stillOn = new Map([...panels].filter(([id]) => !off.has(id)));
    this.#minutesOf = minutesOf;
  }

  /** The closed set of panels still on that some panels come to; the same object for the same set. */
  need(panelIds: readonly PanelId[]): Need {
    if (this.#last?.panelIds === panelIds) return this.#last.need;
    const asked = panelIds.join(' ');
    const need = this.#asked.get(asked) ?? this.#closed(panelIds);
    this.#asked.set(asked, need);
    this.#last = { panelIds, need };
    return need;
  }

  #closed(panelIds: readonly PanelId[]): Need {
    const ids = [...offClosure(this.#stillOn, panelIds)].sort(compareText);
    const panels = ids.map((id) => this.#number(id));
    const key = panels.join(' ');
    const need = this.#needs.get(key) ?? { panels };
    this.#needs.set(key, need);
    return need;
  }

  /** Panels still on that both sets need, closed. */
  common(one: readonly PanelId[], other: readonly PanelId[]): PanelId[] {
    const closed = offClosure(this.#stillOn, other);
    return [...offClosure(this.#stillOn, one)].filter((id) => closed.has(id));
  }

  #number(id: PanelId): number {
    const known = this.#numbers.get(id);
    if (known !== undefined) return known;
    this.#numbers.set(id, this.panels.length);
    this.panels.push({ id, minutes: this.#minutesOf(this.#stillOn.get(id) as Panel) });
    return this.panels.length - 1;
  }
}
