import { type Block, compareWorth, joinBlocks } from './block.ts';
import { costOf, interleave } from './interleave.ts';
import type { LookSpan } from './sidney-sets.ts';
import type { LookGroup, Yard } from './yard.ts';

/** Looks put in order again and again while improving, over all tries of one set: a few milliseconds. */
const mostWork = 20_000;

/** Gains below this share of the cost are rounding, and would let ties flip to and fro. */
const leastGain = 1e-12;

/**
 * A good order of one set of work without search: the span of greatest worth per minute first, worked
 * out anew after each pick, then single spans moved to a better place while that helps.
 * @example
 * quickOrder({ ...layYard([], sample.map.panels, new Set()), groups: [{ panels: [], ...jobRow([jobBlock(0, 0.5, 3)]) }] }, [{ group: 0, from: 0, to: 1, missing: [] }]).inner // => 1.5
 */
export function quickOrder(yard: Yard, spans: readonly LookSpan[]): Block {
  let order = greedy(yard, spans);
  let best = inOrder(yard, order);
  let left = Math.floor(mostWork / Math.max(1, best.looks));
  for (let improved = true; improved && left > 0; ) {
    improved = false;
    for (let from = 0; from < order.length && left > 0; from++) {
      for (let to = 0; to < order.length && left > 0; to++) {
        if (from === to) continue;
        left--;
        const moved = order.toSpliced(from, 1).toSpliced(to, 0, order[from] as LookSpan);
        const tried = inOrder(yard, moved);
        if (tried.cost >= best.cost * (1 - leastGain)) continue;
        order = moved;
        best = tried;
        improved = true;
      }
    }
  }
  return best.blocks.reduce(joinBlocks);
}

function greedy(yard: Yard, spans: readonly LookSpan[]): LookSpan[] {
  const off = new Set<number>();
  const order: LookSpan[] = [];
  const left = [...spans];
  while (left.length > 0) {
    let bestAt = 0;
    let bestWorth: { weight: number; minutes: number } | null = null;
    left.forEach((span, i) => {
      const worth = worthOfOpening(yard, span, off);
      if (bestWorth && compareWorth(worth, bestWorth) <= 0) return;
      bestAt = i;
      bestWorth = worth;
    });
    const [next] = left.splice(bestAt, 1) as [LookSpan];
    for (const panel of next.missing) off.add(panel);
    order.push(next);
  }
  return order;
}

/** Chance and minutes of opening a span and taking as many looks as raise its worth. */
function worthOfOpening(
  yard: Yard,
  span: LookSpan,
  off: ReadonlySet<number>,
): { weight: number; minutes: number } {
  const { looks } = yard.groups[span.group] as LookGroup;
  let weight = 0;
  let minutes = minutesOf(yard, span, off);
  for (let i = span.from; i < span.to; i++) {
    const look = looks[i] as Block;
    if (weight > 0 && look.weight * minutes <= weight * look.minutes) break;
    weight += look.weight;
    minutes += look.minutes;
  }
  return { weight, minutes };
}

function minutesOf(yard: Yard, { missing }: LookSpan, off: ReadonlySet<number>): number {
  let minutes = 0;
  for (const panel of missing) if (!off.has(panel)) minutes += yard.panels[panel]?.minutes ?? 0;
  return minutes;
}

function inOrder(
  yard: Yard,
  order: readonly LookSpan[],
): { cost: number; blocks: readonly Block[]; looks: number } {
  const off = new Set<number>();
  let looks = 0;
  const setups = order.map((span) => {
    looks += span.to - span.from;
    const isShut = span.missing.some((panel) => !off.has(panel));
    const minutes = minutesOf(yard, span, off);
    for (const panel of span.missing) off.add(panel);
    const job = yard.jobs.length + span.group;
    return isShut ? { weight: 0, minutes, inner: 0, job, first: null, second: null } : null;
  });
  const slices = order.map(({ group, from, to }) => ({
    looks: (yard.groups[group] as LookGroup).looks.slice(from, to),
  }));
  const { blocks } = interleave(slices, (position) => setups[position] ?? null);
  return { cost: costOf(blocks), blocks, looks };
}
