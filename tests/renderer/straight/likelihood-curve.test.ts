import { describe, expect, test } from 'vitest';
import { likelihoodColumns, rulerMarks, toneRuns } from '#renderer/straight/likelihood-curve.ts';

const even = {
  cellEdgesMm: Float64Array.from({ length: 101 }, (_, i) => i * 10),
  cellProbability: new Float64Array(100).fill(0.01),
};

describe('the probability curve', () => {
  test('an even chance gives a level curve at any width', () => {
    for (const columns of [7, 50, 100, 333]) {
      const heights = likelihoodColumns(even, 1000, columns);
      expect(heights).toHaveLength(columns);
      for (const height of heights) expect(height).toBeCloseTo(1, 9);
    }
  });

  test('the curve keeps the weight of every stretch, also when a peak is narrower than a column', () => {
    const cellEdgesMm = new Float64Array([0, 400, 401, 1000]);
    const cellProbability = new Float64Array([0.2, 0.5, 0.3]);
    const heights = likelihoodColumns({ cellEdgesMm, cellProbability }, 1000, 10);
    const sum = heights.reduce((total, height) => total + height, 0);
    expect((heights[4] as number) / sum).toBeCloseTo(0.5 + (0.3 * 99) / 599, 9);
    expect(Math.max(...heights)).toBe(1);
  });

  test('nothing possible draws nothing', () => {
    const none = { cellEdgesMm: new Float64Array([0, 1000]), cellProbability: new Float64Array([0]) };
    expect(likelihoodColumns(none, 1000, 4)).toEqual([0, 0, 0, 0]);
  });

  test('neighbours of one tone are drawn as one, and nothing is lost', () => {
    const runs = toneRuns([0, 0, 1, 1, 0], (height) => height);
    expect(runs).toEqual([
      { from: 0, to: 2, step: 0 },
      { from: 2, to: 4, step: 1 },
      { from: 4, to: 5, step: 0 },
    ]);
  });
});

describe('the ruler', () => {
  test('marks are round, start at zero and stay on the loom', () => {
    expect(rulerMarks(5.65, 6)).toEqual([0, 1, 2, 3, 4, 5]);
    for (const length of [0.4, 1.5, 5.65, 18, 60]) {
      const marks = rulerMarks(length, 8);
      expect(marks[0]).toBe(0);
      expect(marks.at(-1)).toBeLessThanOrEqual(length * 1.000001);
      expect(marks.length).toBeGreaterThan(3);
      expect(marks.length).toBeLessThan(11);
    }
  });
});
