import { describe, expect, test } from 'vitest';
import { orderByWorth } from '#core/dig/order-by-worth.ts';
import { seededChance } from '#core/quantity/chance.ts';

describe('things by falling worth per minute', () => {
  test('equals sorting by comparing, with equal worths, no minutes and worths a rounding apart, on 400 draws', () => {
    const chance = seededChance(61);
    const minutesOf = (weight: number): number => {
      const kind = chance();
      if (kind < 0.2) return 0;
      if (kind < 0.5) return 2;
      return kind < 0.7 ? weight * 4 * (1 + Math.floor(chance() * 3) * 1e-15) : 1 + chance();
    };
    for (let round = 0; round < 400; round++) {
      const weights = Array.from({ length: Math.floor(chance() * 60) }, () =>
        chance() < 0.4 ? 0.5 : chance() / 1000,
      );
      const minutes = weights.map(minutesOf);
      const worth = weights.map((weight, i) => weight / (minutes[i] as number));
      const compared = weights
        .map((_, i) => i)
        .sort((a, b) => (worth[a] === worth[b] ? b - a : (worth[b] as number) - (worth[a] as number)));
      expect([...orderByWorth(weights, minutes, (a, b) => b - a)]).toEqual(compared);
    }
  });

  test('ten thousand alike keep the order of their names', () => {
    const alike = new Array(10_000).fill(0.25);
    expect(orderByWorth(alike, alike, (a, b) => b - a).slice(0, 3)).toEqual(
      Int32Array.of(9_999, 9_998, 9_997),
    );
  });
});
