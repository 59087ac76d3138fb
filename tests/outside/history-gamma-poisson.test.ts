import { poissonDistribution } from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import { afterFinds, meanRate, rateDeviation } from '#core/history/gamma-rate.ts';
import { taughtFactor } from '#core/history/taught-factor.ts';

/** Chance that a gamma rate of whole shape a exceeds x: fewer than a events of a Poisson count of mean b x. */
function exceeds({ a, b }: { readonly a: number; readonly b: number }, x: number): number {
  const counts = poissonDistribution(b * x) ?? [];
  return counts.slice(0, a).reduce((sum, chance) => sum + chance, 0);
}

describe('gamma rates against the Poisson distribution of simple-statistics', () => {
  test.each([
    [1.2, 5, 2.1875, 1.03, 3.7],
    [3, 1, 0.6, 0.16, 1.26],
    [2.8, 1, 0.625, 0.17, 1.31],
  ])(
    '%d expected, %i found: factor %d, nine times in ten between %d and %d',
    (expected, finds, mean, low, high) => {
      const rate = afterFinds({ a: 2, b: 2 }, finds, expected);
      expect(taughtFactor({ finds, expected })).toBeCloseTo(mean, 6);
      expect(meanRate(rate)).toBeCloseTo(mean, 6);
      expect(exceeds(rate, low)).toBeCloseTo(0.95, 1);
      expect(exceeds(rate, high)).toBeCloseTo(0.05, 1);
      expect(Math.abs(exceeds(rate, low) - 0.95)).toBeLessThan(0.01);
      expect(Math.abs(exceeds(rate, high) - 0.05)).toBeLessThan(0.005);
    },
  );

  test('without finds or exposure the factor is one', () => {
    expect(taughtFactor({ finds: 0, expected: 0 })).toBe(1);
  });

  test("mean and deviation are those of the library's tail, summed in fine steps", () => {
    const rate = afterFinds({ a: 2, b: 2 }, 5, 1.2);
    const step = 0.005;
    let [mean, square] = [0, 0];
    for (let x = step / 2; x < 12; x += step) {
      const tail = exceeds(rate, x);
      mean += tail * step;
      square += 2 * x * tail * step;
    }
    // The library leaves out counts beyond 99.99 percent, and with them a little of each tail.
    expect(mean).toBeCloseTo(meanRate(rate), 2);
    expect(Math.sqrt(square - mean * mean)).toBeCloseTo(rateDeviation(rate), 2);
  });
});
