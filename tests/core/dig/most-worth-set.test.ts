import { describe, expect, test } from 'vitest';
import { mostWorthSet } from '#core/dig/most-worth-set.ts';
import { seededChance } from '#core/quantity/chance.ts';

/** Worth less cost of a set of projects given as bits. */
function worthOf(
  set: number,
  worth: readonly number[],
  needs: readonly (readonly number[])[],
  cost: readonly number[],
): number {
  const taken = worth.map((_, i) => i).filter((i) => set & (1 << i));
  const tools = new Set(taken.flatMap((i) => needs[i] as readonly number[]));
  const spent = [...tools].reduce((sum, tool) => sum + (cost[tool] as number), 0);
  return taken.reduce((sum, i) => sum + (worth[i] as number), 0) - spent;
}

describe('which places are worth opening together', () => {
  test('equals the best of all sets tried one by one, and is the smallest of them, on 300 draws', () => {
    const chance = seededChance(62);
    for (let round = 0; round < 300; round++) {
      const projects = 1 + Math.floor(chance() * 8);
      const tools = 1 + Math.floor(chance() * 6);
      // Whole numbers, so that sets of equal worth come up.
      const worth = Array.from({ length: projects }, () => 1 + Math.floor(chance() * 9));
      const cost = Array.from({ length: tools }, () => 1 + Math.floor(chance() * 12));
      const needs = worth.map(() => cost.map((_, tool) => tool).filter(() => chance() < 0.4));
      let most = 0;
      let smallest = 0;
      const size = (set: number) => set.toString(2).replaceAll('0', '').length;
      for (let set = 1; set < 2 ** projects; set++) {
        const value = worthOf(set, worth, needs, cost);
        if (value > most || (value === most && size(set) < size(smallest))) [most, smallest] = [value, set];
      }
      const chosen = mostWorthSet(worth, needs, cost).reduce((set, i) => set | (1 << i), 0);
      expect(worthOf(chosen, worth, needs, cost)).toBe(most);
      expect(chosen).toBe(smallest);
    }
  });
});
