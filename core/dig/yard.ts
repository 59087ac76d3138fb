import { offClosure } from '../map/panel-order.ts';
import type { Panel } from '../map/records.ts';
import { compareText } from '../quantity/compare-text.ts';
import type { PanelId } from '../quantity/id.ts';
import { type Block, compareWorth, jobBlock } from './block.ts';
import type { Look } from './look.ts';

/** One panel still on, numbered. */
export interface YardPanel {
  readonly id: PanelId;
  readonly minutes: number;
}

/** Looks that need exactly the same panels off. */
export interface LookGroup {
  /** Numbers of the panels still on that must come off, closed under what those need. */
  readonly panels: readonly number[];
  /** Looks as blocks, best worth per minute first. */
  readonly looks: readonly Block[];
}

/** The whole job in numbers: panels still on, and looks collapsed by what they need. */
export interface Yard<L extends Look = Look> {
  readonly panels: readonly YardPanel[];
  readonly groups: readonly LookGroup[];
  /** What each job number from a block means. */
  readonly jobs: readonly YardJob<L>[];
}

/** A first look, or a second one for what the first overlooked. */
export interface YardJob<L extends Look = Look> {
  readonly look: L;
  readonly again: boolean;
}

/** Chance under which a look is not worth a line (rounding, not judgement). */
const negligible = 1e-9;

/**
 * Collapses looks by the closed set of panels they still need. Each place has two looks: the first of
 * weight p q, and one return of weight p q (1 - q) for what was overlooked. Panels already off cost
 * nothing and are left out. Looks marked `once` have no return. O(looks x panels).
 * @example
 * layYard([], sample.map.panels, new Set()).groups // => []
 */
export function layYard<L extends Look>(
  looks: readonly L[],
  panels: ReadonlyMap<PanelId, Panel>,
  off: ReadonlySet<PanelId>,
): Yard<L> {
  const numbers = new Map<PanelId, number>();
  const numbered: YardPanel[] = [];
  const jobs: YardJob<L>[] = [];
  const byNeed = new Map<string, { panels: number[]; looks: Block[] }>();
  const stillOn = new Map([...panels].filter(([id]) => !off.has(id)));
  const sorted = [...looks].sort((a, b) => compareText(a.id, b.id));
  for (const look of sorted) {
    const seen = look.probability * look.quality;
    if (seen < negligible) continue;
    const need = [...offClosure(stillOn, look.panelIds)].sort(compareText).map((id) => {
      const known = numbers.get(id);
      if (known !== undefined) return known;
      numbers.set(id, numbered.length);
      numbered.push({ id, minutes: (stillOn.get(id) as Panel).minutesOff });
      return numbered.length - 1;
    });
    const key = need.join(' ');
    const group = byNeed.get(key) ?? { panels: need, looks: [] };
    byNeed.set(key, group);
    for (const again of [false, true]) {
      const weight = again ? seen * (1 - look.quality) : seen;
      if (weight < negligible || (again && look.once)) continue;
      group.looks.push(jobBlock(jobs.length, weight, look.minutes));
      jobs.push({ look, again });
    }
  }
  const groups = [...byNeed.values()];
  for (const group of groups) group.looks.sort((a, b) => -compareWorth(a, b) || a.job - b.job);
  return { panels: numbered, groups, jobs };
}
