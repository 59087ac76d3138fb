import { describe, expect, test } from 'vitest';
import { credibleLength } from '#core/locate/credible-length.ts';
import { cumulate, medianStation, probabilityWithin } from '#core/locate/cumulative.ts';
import { layHypotheses, noneAt } from '#core/locate/hypotheses.ts';
import { classPrior, evenFactors, logPrior, noneOfThesePrior, type PriorShape } from '#core/locate/prior.ts';
import { faultClasses } from '#core/map/kinds.ts';
import { compensatedSum } from '#core/quantity/sums.ts';
import { sample } from '#tests/sample.ts';

describe('the prior', () => {
  const parts = [{ nodeId: 'node:far', stationMm: 1500, place: 'second-end' }] as const;
  const hypotheses = layHypotheses(sample.field.cellEdgesMm, parts);

  test('sums to one with and without factors', () => {
    for (const factors of [evenFactors, { ...evenFactors, 'short-to-ground': 8, open: 0.3 }]) {
      const sum = compensatedSum(logPrior(hypotheses, sample.field, [2], factors).map(Math.exp));
      expect(sum).toBeCloseTo(1, 12);
    }
  });

  test('gives each class its chance and keeps the rest for none of these', () => {
    const row = logPrior(hypotheses, sample.field, [2], evenFactors).map(Math.exp);
    faultClasses.forEach((kind, k) => {
      const cells = row.subarray(k * hypotheses.cellCount, (k + 1) * hypotheses.cellCount);
      expect(compensatedSum(cells)).toBeCloseTo(classPrior[kind] * (1 - noneOfThesePrior), 12);
    });
    expect(row[noneAt(hypotheses)]).toBeCloseTo(noneOfThesePrior, 12);
  });

  test('a place with twice the hazard has more chance but less than twice: the hazard is not believed to the full', () => {
    const ratioFor = (shape?: PriorShape): number => {
      const row = logPrior(hypotheses, sample.field, [2], evenFactors, shape);
      return Math.exp((row[75] as number) - (row[10] as number));
    };
    expect(ratioFor()).toBeGreaterThan(1.5);
    expect(ratioFor()).toBeLessThan(1.75);
    expect(ratioFor({ hazardExponent: 1, evenFloor: 0 })).toBeCloseTo(2, 12);
    expect(ratioFor({ hazardExponent: 1, evenFloor: 1 })).toBeCloseTo(1, 12);
  });

  test('a wire without any hazard is even from end to end', () => {
    const empty = new Float64Array(150);
    const byClass = Object.fromEntries(faultClasses.map((kind) => [kind, empty])) as Record<
      (typeof faultClasses)[number],
      Float64Array
    >;
    const row = logPrior(hypotheses, { ...sample.field, byClass }, [2], evenFactors);
    expect(row[149]).toBeCloseTo(row[0] as number, 12);
  });
});

describe('what is read off the curve', () => {
  const edges = new Float64Array([0, 10, 20, 40]);
  const chances = new Float64Array([0.2, 0.5, 0.1]);

  test('a stretch that cuts cells takes its share of them', () => {
    const curve = cumulate(edges, chances);
    expect(probabilityWithin(curve, { fromMm: 5, toMm: 30 })).toBeCloseTo(0.1 + 0.5 + 0.05, 12);
    expect(probabilityWithin(curve, { fromMm: -5, toMm: 90 })).toBeCloseTo(0.8, 12);
  });

  test('the median has half of the wire’s chance on either side', () => {
    const median = medianStation(cumulate(edges, chances));
    expect(median).toBeCloseTo(14, 12);
    expect(probabilityWithin(cumulate(edges, chances), { fromMm: 0, toMm: median })).toBeCloseTo(0.4, 12);
  });

  test('the smallest region takes the densest cells first and only part of the last', () => {
    // 80 percent of 0.8 is 0.64: cell 2 whole (0.5), then 0.14 of the 0.2 in cell 1.
    expect(credibleLength(edges, chances, 0.8)).toBeCloseTo(10 + 7, 12);
  });

  test('on an even wire 80 percent of the chance is 80 percent of the length', () => {
    expect(credibleLength(edges, new Float64Array([0.1, 0.1, 0.2]), 0.8)).toBeCloseTo(32, 12);
  });
});
