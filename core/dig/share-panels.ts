import { type Block, compareWorth, joinBlocks } from './block.ts';
import type { Yard } from './yard.ts';

/** Rounds of evening out; the bound hardly moves after some dozen. */
const rounds = 60;

/**
 * Splits each panel's minutes among the groups that need it, so that the worth per minute of those
 * groups comes out as even as it can: the worthier group bears more. Any split keeps the bound true;
 * an even one makes it sharp. shares[group][i] belongs to the group's i-th panel.
 * @example
 * sharePanels(layYard([], sample.map.panels, new Set())) // => []
 */
export function sharePanels(yard: Yard): readonly Float64Array[] {
  const users = yard.panels.map(() => 0);
  for (const { panels } of yard.groups)
    for (const panel of panels) users[panel] = (users[panel] as number) + 1;
  const minutesOf = (panel: number) => (yard.panels[panel] as { minutes: number }).minutes;
  const shares = yard.groups.map(({ panels }) =>
    Float64Array.from(panels, (panel) => minutesOf(panel) / (users[panel] as number)),
  );
  for (let round = 0; round < rounds; round++) {
    const worth = yard.groups.map((_, group) => splitWorth(yard, shares, group));
    const sums = yard.panels.map(() => 0);
    yard.groups.forEach(({ panels }, group) => {
      panels.forEach((panel, i) => {
        const share = shares[group] as Float64Array;
        share[i] = (share[i] as number) * (worth[group] as number);
        sums[panel] = (sums[panel] as number) + (share[i] as number);
      });
    });
    yard.groups.forEach(({ panels }, group) => {
      panels.forEach((panel, i) => {
        const share = shares[group] as Float64Array;
        share[i] =
          (sums[panel] as number) > 0
            ? ((share[i] as number) / (sums[panel] as number)) * minutesOf(panel)
            : 0;
      });
    });
  }
  return shares;
}

/** Worth per minute of a group that pays only its shares, with the looks that raise it. */
function splitWorth(yard: Yard, shares: readonly Float64Array[], group: number): number {
  const minutes = (shares[group] as Float64Array).reduce((sum, share) => sum + share, 0);
  let block: Block = { weight: 0, minutes, inner: 0, job: -1, first: null, second: null };
  for (const look of (yard.groups[group] as { looks: readonly Block[] }).looks) {
    if (block.weight > 0 && compareWorth(look, block) <= 0) break;
    block = joinBlocks(block, look);
  }
  return block.minutes > 0 ? block.weight / block.minutes : 1;
}
