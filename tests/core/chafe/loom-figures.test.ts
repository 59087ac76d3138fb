import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { defaultAssumptions } from '#core/chafe/chafe-assumptions.ts';
import { loomFigures } from '#core/chafe/loom-figures.ts';
import { runContext } from '#core/chafe/run-context.ts';
import { runSurroundings } from '#core/chafe/run-surroundings.ts';
import { randomMap } from '#tests/generated/random-map.ts';
import { clip, onlyRun, straightMap } from './chafe-map.ts';

describe('the loom of a run with its bounds, to be shown', () => {
  test('ten wires of 0.5 mm2 held at 300 mm: 5.842 mm, 67.7 g a metre, 22.2 Hz and 0.65 mm between their bounds', () => {
    const map = straightMap(600, { clips: [clip('a', 300)] });
    const loom = loomFigures(map, onlyRun(map));
    expect(loom?.assumedWires).toBe(10);
    expect(loom?.bundle.diameterMm).toBeCloseTo(5.842, 3);
    expect(loom?.bundle.kgPerMetre).toBeCloseTo(0.0677, 4);
    const [first] = loom?.spans ?? [];
    expect(first?.spanMm).toBe(300);
    expect(first?.hz.mean).toBeCloseTo(22.205, 2);
    // sqrt of stiffness: 1,607 and 1.256e6 N mm2 against their geometric mean.
    expect(first?.hz.slipping).toBeCloseTo(22.205 * (1_606.6 / 44_924.7) ** 0.5, 1);
    expect(first?.hz.stuck).toBeCloseTo(22.205 * (1_256_233 / 44_924.7) ** 0.5, 0);
    expect(first?.sagMm.mean).toBeCloseTo(0.648 / (1 + 0.648 / 15), 2);
  });

  test('on any invented car the model lies between the bounds, and is what the hazard uses', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 10_000 }), (seed) => {
        const map = randomMap(seed);
        for (const segment of map.segments.values()) {
          const around = runSurroundings(map, segment, defaultAssumptions);
          const loom = loomFigures(map, segment);
          if (!around || !loom) throw new Error('every run of an invented car has a shape');
          const { spans } = runContext(segment, around, defaultAssumptions);
          expect(loom.spans.length).toBe(spans.length);
          loom.spans.forEach(({ hz, sagMm }, i) => {
            expect(hz.slipping).toBeLessThanOrEqual(hz.mean);
            expect(hz.mean).toBeLessThanOrEqual(hz.stuck);
            expect(sagMm.slipping).toBeGreaterThanOrEqual(sagMm.mean);
            expect(sagMm.mean).toBeGreaterThanOrEqual(sagMm.stuck);
            expect(hz.mean).toBeCloseTo(spans[i]?.drive.hz ?? 0, 9);
            expect(sagMm.mean).toBeCloseTo(spans[i]?.drive.sagMm ?? 0, 9);
          });
        }
      }),
      { seed: 62, numRuns: 20 },
    );
  });
});
