import { describe, expect, test } from 'vitest';
import { logBeepChance } from '#core/circuit/beep.ts';
import { defaultMeters, handMeter } from '#core/circuit/default-meter-table.ts';
import { accuracyLimit, shownSpread, stepAt } from '#core/circuit/meter.ts';
import { logNormalTail, normalQuantile, normalTail } from '#core/circuit/normal-tail.ts';
import { logScore, outlierNats, shownScore } from '#core/circuit/shown-score.ts';

const body = { on: 'body' } as const;
const ohms = (shown: number | 'open-line' | 'over-range') =>
  shownScore({ test: 'ohms', from: body, to: body, ohms: shown }, handMeter);

describe('a meter', () => {
  test('shows ten times coarser on each higher range', () => {
    expect([5, 700, 7000, 70_000].map((figure) => stepAt(handMeter.ohms, figure))).toEqual([0.1, 1, 10, 100]);
  });

  test('is never more exact for a larger figure', () => {
    for (const meter of defaultMeters) {
      const limits = [0, 1, 10, 100, 1000].map((figure) => accuracyLimit(meter.ohms, figure));
      expect([...limits].sort((a, b) => a - b)).toEqual(limits);
      expect(shownSpread(meter.ohms, 1, 0.05)).toBeGreaterThan(shownSpread(meter.ohms, 1));
    }
  });

  test('favours the figure it showed and clips what is far off', () => {
    expect(logScore(ohms(10), 10)).toBeGreaterThan(-1e-6);
    expect(logScore(ohms(10), 10.5)).toBeLessThan(logScore(ohms(10), 10.1));
    expect(logScore(ohms(10), 1e5)).toBe(-outlierNats);
  });

  test('an open line speaks for more than the range can show, and so does over-range', () => {
    for (const shown of ['open-line', 'over-range'] as const) {
      expect(logScore(ohms(shown), 1e7)).toBeGreaterThan(-0.01);
      expect(logScore(ohms(shown), 100)).toBe(-outlierNats);
    }
  });

  test('a beep and silence are the only two outcomes', () => {
    for (const figure of [0.1, 20, 50, 90, 1000]) {
      const edge = { ohms: 50, spread: 0.6 };
      const both = Math.exp(logBeepChance(edge, figure, true)) + Math.exp(logBeepChance(edge, figure, false));
      expect(both).toBeCloseTo(1, 6);
    }
  });
});

describe('the normal tail (figures from any table of the normal distribution)', () => {
  test('at 1, 1.96, 3 and 6', () => {
    expect(normalTail(1)).toBeCloseTo(0.1586553, 6);
    expect(normalTail(1.96)).toBeCloseTo(0.0249979, 6);
    expect(normalTail(3) / 1.349898e-3).toBeCloseTo(1, 5);
    expect(Math.exp(logNormalTail(6)) / 9.865876e-10).toBeCloseTo(1, 5);
    expect(normalTail(-1)).toBeCloseTo(0.8413447, 6);
  });

  test('the quantile undoes it', () => {
    for (const share of [1e-6, 0.01, 0.3, 0.5, 0.9, 0.999])
      expect(1 - normalTail(normalQuantile(share))).toBeCloseTo(share, 6);
  });
});
