import fc from 'fast-check';
import { gammaln } from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import { afterFinds, drawnTowards, meanRate, rateDeviation } from '#core/history/gamma-rate.ts';
import { finerFactor, taughtFactor } from '#core/history/taught-factor.ts';

const count = fc.integer({ min: 0, max: 50 });
const exposure = fc.double({ min: 0, max: 200, noNaN: true });

describe('a rate learnt from finds', () => {
  test.each([
    [1.2, 5, 2.1875],
    [3, 1, 0.6],
    [2.8, 1, 0.625],
    [0, 0, 1],
  ])('%d expected and %i found makes a factor of %d', (expected, finds, factor) => {
    // Conjugacy of gamma and Poisson, closed form.
    expect(taughtFactor({ finds, expected })).toBeCloseTo(factor, 6);
  });

  test('three finds in 17 jobs lift a rate of 0.025 to 0.0946', () => {
    const prior = { a: 0.5, b: 20 };
    expect(meanRate(prior)).toBeCloseTo(0.025, 12);
    expect(meanRate(afterFinds(prior, 3, 17))).toBeCloseTo(0.0946, 4);
  });

  test('mean and deviation agree with prior times Poisson likelihood, summed in fine steps', () => {
    const [a, b, finds, time] = [2, 2, 5, 1.2];
    let weight = 0;
    let mean = 0;
    let square = 0;
    for (let rate = 0.0005; rate < 30; rate += 0.001) {
      const logPrior = (a - 1) * Math.log(rate) - b * rate + a * Math.log(b) - gammaln(a);
      const logLikelihood = finds * Math.log(rate * time) - rate * time - gammaln(finds + 1);
      const density = Math.exp(logPrior + logLikelihood);
      weight += density;
      mean += density * rate;
      square += density * rate * rate;
    }
    const posterior = afterFinds({ a, b }, finds, time);
    expect(mean / weight).toBeCloseTo(meanRate(posterior), 6);
    expect(Math.sqrt(square / weight - (mean / weight) ** 2)).toBeCloseTo(rateDeviation(posterior), 6);
  });

  test('a find raises it, a job without one lowers it, and as many as expected leave it', () => {
    fc.assert(
      fc.property(count, exposure, (finds, expected) => {
        const now = taughtFactor({ finds, expected });
        expect(taughtFactor({ finds: finds + 1, expected })).toBeGreaterThan(now);
        expect(taughtFactor({ finds, expected: expected + 0.5 })).toBeLessThan(now);
        expect(taughtFactor({ finds, expected: finds })).toBeCloseTo(1, 12);
      }),
      { seed: 8 },
    );
  });

  test('an entry taken back leaves no trace', () => {
    fc.assert(
      fc.property(count, exposure, (finds, time) => {
        const before = { a: 0.5, b: 20 };
        const after = afterFinds(afterFinds(before, finds, time), -finds, -time);
        expect(after.a).toBeCloseTo(before.a, 9);
        expect(after.b).toBeCloseTo(before.b, 9);
      }),
      { seed: 9 },
    );
  });

  test('a spot with little of its own stays near its kind, one with much goes its own way', () => {
    const kind = { a: 6, b: 60 };
    const prior = drawnTowards(kind, 20);
    expect(meanRate(afterFinds(prior, 0, 0))).toBeCloseTo(0.1, 12);
    const few = meanRate(afterFinds(prior, 1, 2));
    const many = meanRate(afterFinds(prior, 100, 200));
    expect(few).toBeGreaterThan(0.1);
    expect(few).toBeLessThan(0.2);
    expect(many).toBeGreaterThan(0.45);
    expect(finerFactor({ finds: 0, expected: 0 }, 3)).toBe(1);
    expect(finerFactor({ finds: 3, expected: 1 }, 3)).toBe(1);
  });
});
