import { offClosure } from '../map/panel-order.ts';
import type { Panel } from '../map/records.ts';
import { compareText } from '../quantity/compare-text.ts';
import type { PanelId } from '../quantity/id.ts';
import { type Block, type JobRow, jobRow } from './block.ts';
import type { HalfView, Look } from './look.ts';
import { orderByWorth } from './order-by-worth.ts';

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
  /** What each job number from a block means; numbered by falling worth per minute. */
  readonly jobs: readonly YardJob<L>[];
  /** Sum of all weights: the chance that the fault is seen in the end. */
  readonly weight: number;
}

/** One going to one place. */
export interface YardJob<L extends Look = Look> extends Block {
  readonly look: L;
  readonly view: View;
  /** Number of the group it belongs to. */
  readonly group: number;
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
  const goings = new Goings<L>();
  for (const look of looks) {
    const seen = look.probability * look.quality;
    if (seen < negligible) continue;
    const way = wishes.wayOf?.(look);
    let panelIds: readonly PanelId[] | null = look.panelIds;
    let half = 0;
    if (way) {
      panelIds = way.panelIds;
      if (way.halfView && look.halfView) {
        half = seenByHalf(look, look.halfView);
        const byHalf = look.halfView.panelIds;
        const free = wishes.freeHalfViews;
        const needed = free ? numbering.common(byHalf, panelIds ?? byHalf) : byHalf;
        goings.add(look, 'half', numbering.need(needed), half, free ? 0 : look.halfView.minutes);
      }
    }
    if (!panelIds) continue;
    const need = numbering.need(panelIds);
    let first = seen - half;
    let again = look.once ? 0 : seen * (1 - look.quality);
    // After a half view nearly as good as the full look, the return sees more than the full look: taken as
    // even, neither goes before the other, and no order with the return last costs less than it says.
    if (half > 0 && again > first) first = again = (first + again) / 2;
    goings.add(look, 'full', need, first, look.minutes);
    goings.add(look, 'again', need, again, look.minutes);
  }
  return { panels: numbering.panels, ...goings.inGroups() };
}

/** Goings to places as they are found, in columns: thousands of them, most of them kept only once. */
class Goings<L extends Look> {
  readonly #looks: L[] = [];
  readonly #views: View[] = [];
  readonly #needs: Need[] = [];
  readonly #weights: number[] = [];
  readonly #minutes: number[] = [];

  add(look: L, view: View, need: Need, weight: number, minutes: number): void {
    if (weight < negligible) return;
    this.#looks.push(look);
    this.#views.push(view);
    this.#needs.push(need);
    this.#weights.push(weight);
    this.#minutes.push(minutes);
  }

  /** Jobs by falling worth, equal ones by the names of their looks, and the groups they make up. */
  inGroups(): Pick<Yard<L>, 'groups' | 'jobs' | 'weight'> {
    const looks = this.#looks;
    const order = orderByWorth(
      this.#weights,
      this.#minutes,
      (a, b) => compareText((looks[a] as L).id, (looks[b] as L).id) || a - b,
    );
    const jobs: YardJob<L>[] = [];
    const rows: { readonly panels: readonly number[]; readonly looks: YardJob<L>[] }[] = [];
    let weight = 0;
    for (let number = 0; number < order.length; number++) {
      const at = order[number] as number;
      const need = this.#needs[at] as Need;
      if (need.group < 0) {
        need.group = rows.length;
        rows.push({ panels: need.panels, looks: [] });
      }
      const job = yardJob(
        number,
        this.#weights[at] as number,
        this.#minutes[at] as number,
        looks[at] as L,
        this.#views[at] as View,
        need.group,
      );
      jobs.push(job);
      (rows[need.group] as { looks: YardJob<L>[] }).looks.push(job);
      weight += job.weight;
    }
    const groups = rows.map((row) => ({ panels: row.panels, ...jobRow(row.looks) }));
    return { groups, jobs, weight };
  }
}

const yardJob = <L extends Look>(
  job: number,
  weight: number,
  minutes: number,
  look: L,
  view: View,
  group: number,
): YardJob<L> => ({
  weight,
  minutes,
  inner: weight * minutes,
  job,
  first: null,
  second: null,
  look,
  view,
  group,
});

/**
 * Chance that a half view shows the fault: it never shows more than the full look would.
 * @example
 * seenByHalf({ id: 'a', panelIds: [], probability: 0.5, quality: 0.9, minutes: 1 }, { panelIds: [], quality: 0.4, minutes: 1 }) // => 0.2
 */
export function seenByHalf(look: Look, half: HalfView): number {
  return look.probability * Math.min(look.quality, half.quality);
}

/** Numbers of panels still on, closed under what those need; the same object for the same set. */
interface Need {
  readonly panels: readonly number[];
  /** Number of its group once one of its looks was put into one; -1 before. */
  group: number;
}

/** What was asked for so far, one panel after another, and what it came to. */
interface Asked {
  readonly next: Map<PanelId, Asked>;
  need: Need | null;
}

const asked = (): Asked => ({ next: new Map(), need: null });

/** Panels still on, numbered by their ids; each set asked for is closed once. */
class Numbering {
  readonly panels: readonly YardPanel[];
  readonly #stillOn: ReadonlyMap<PanelId, Panel>;
  readonly #numbers: ReadonlyMap<PanelId, number>;
  readonly #asked = asked();
  readonly #needs = new Map<string, Need>();

  constructor(
    panels: ReadonlyMap<PanelId, Panel>,
    off: ReadonlySet<PanelId>,
    minutesOf: (panel: Panel) => number,
  ) {
    const left = [...panels.values()].filter(({ id }) => !off.has(id));
    left.sort((a, b) => compareText(a.id, b.id));
    this.#stillOn = new Map(left.map((panel) => [panel.id, panel]));
    this.#numbers = new Map(left.map(({ id }, i) => [id, i]));
    this.panels = left.map((panel) => ({ id: panel.id, minutes: minutesOf(panel) }));
  }

  /** The closed set of panels still on that some panels come to. */
  need(panelIds: readonly PanelId[]): Need {
    let at = this.#asked;
    for (const id of panelIds) {
      let next = at.next.get(id);
      if (!next) {
        next = asked();
        at.next.set(id, next);
      }
      at = next;
    }
    at.need ??= this.#closed(panelIds);
    return at.need;
  }

  #closed(panelIds: readonly PanelId[]): Need {
    const ids = offClosure(this.#stillOn, panelIds);
    const panels = Array.from(ids, (id) => this.#numbers.get(id) as number).sort((a, b) => a - b);
    const key = panels.join(' ');
    const need = this.#needs.get(key) ?? { panels, group: -1 };
    this.#needs.set(key, need);
    return need;
  }

  /** Panels still on that both sets need, closed. */
  common(one: readonly PanelId[], other: readonly PanelId[]): PanelId[] {
    const closed = offClosure(this.#stillOn, other);
    return [...offClosure(this.#stillOn, one)].filter((id) => closed.has(id));
  }
}
