import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { whatIf } from '#core/chafe/what-if.ts';
import { randomMap } from '#tests/generated/random-map.ts';
import { clip, onlyRun, spot, straightMap } from './chafe-map.ts';

const fall = (result: ReturnType<typeof whatIf>): number => {
  if (!result.ok) throw new Error(result.problem.code);
  return result.value.fallsBy;
};

describe('what a repair would do to the hazard of a run', () => {
  const map = straightMap(600, {}, [spot('edge', 300, 9)]);

  test('a clip beside the edge, a sleeve and an edge strip each lower it', () => {
    expect(fall(whatIf(map, 'segment:only', { add: 'clip', stationMm: 300 }))).toBeGreaterThan(0.5);
    expect(fall(whatIf(map, 'segment:only', { add: 'sleeve', covering: 'braided-sleeve' }))).toBeGreaterThan(
      0.7,
    );
    expect(
      fall(whatIf(map, 'segment:only', { add: 'edge-strip', rubSpotId: 'rub-spot:edge' })),
    ).toBeGreaterThan(0.5);
  });

  test('the map and its run stay as they were', () => {
    const before = structuredClone(onlyRun(map));
    whatIf(map, 'segment:only', { add: 'clip', stationMm: 300 });
    expect(onlyRun(map)).toEqual(before);
    expect(onlyRun(map).clips).not.toContainEqual(clip('what-if', 300));
  });

  test('refuses a run or spot that is not there and a clip off the run', () => {
    expect(whatIf(map, 'segment:none', { add: 'clip', stationMm: 1 })).toMatchObject({
      problem: { code: 'not-found' },
    });
    expect(whatIf(map, 'segment:only', { add: 'edge-strip', rubSpotId: 'rub-spot:none' })).toMatchObject({
      problem: { code: 'not-found', thing: 'rub-spot:none' },
    });
    expect(whatIf(map, 'segment:only', { add: 'clip', stationMm: 601 })).toMatchObject({
      problem: { code: 'bad-value', field: 'stationMm' },
    });
  });

  test('the strongest sleeve never raises the hazard of any run of an invented car', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 10_000 }), (seed) => {
        const car = randomMap(seed);
        for (const id of car.segments.keys()) {
          expect(fall(whatIf(car, id, { add: 'sleeve', covering: 'braided-sleeve' }))).toBeGreaterThanOrEqual(
            -1e-12,
          );
        }
      }),
      { seed: 21, numRuns: 30 },
    );
  });
});
