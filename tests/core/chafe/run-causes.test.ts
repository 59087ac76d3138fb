import fc from 'fast-check';
import { expect, test } from 'vitest';
import { createHazardCache } from '#core/chafe/hazard-cache.ts';
import { causeMass, runCauses, spotParts } from '#core/chafe/run-causes.ts';
import { wholeHazard } from '#core/chafe/segment-hazard.ts';
import { randomMap } from '#tests/generated/random-map.ts';
import { sample } from '#tests/sample.ts';

const seeds = fc.integer({ min: 0, max: 100_000 });

test('the shares of a stretch’s causes sum to one but for what is too small to list', () => {
  fc.assert(
    fc.property(seeds, fc.double({ min: 0, max: 0.8, noNaN: true }), (seed, from) => {
      const map = randomMap(seed, { rubSpots: 6 });
      for (const hazard of createHazardCache().hazards(map).values()) {
        const causes = runCauses(hazard, from * hazard.lengthMm, hazard.lengthMm);
        if (causes.length === 0) continue;
        const sum = causes.reduce((total, { share }) => total + share, 0);
        expect(sum).toBeLessThanOrEqual(1 + 1e-9);
        expect(sum).toBeGreaterThan(0.95);
        expect(causes.map(({ share }) => share)).toEqual(
          causes.map(({ share }) => share).sort((a, b) => b - a),
        );
      }
    }),
    { seed: 11, numRuns: 25 },
  );
});

test('a stretch in two halves has as much of a cause as its halves together', () => {
  const hazard = createHazardCache().hazards(sample.map).get('segment:middle');
  if (!hazard) throw new Error('no hazard');
  for (const cause of hazard.causes) {
    const halves = causeMass(hazard, cause, 100, 233) + causeMass(hazard, cause, 233, 400);
    expect(halves).toBeCloseTo(causeMass(hazard, cause, 100, 400), 12);
  }
});

test('what the rub spots add is never more than the whole map’s hazard, and no spot adds what it cannot reach', () => {
  fc.assert(
    fc.property(seeds, (seed) => {
      const map = randomMap(seed, { rubSpots: 8 });
      const parts = spotParts(map, createHazardCache().hazards(map));
      const sum = [...parts.values()].reduce((total, part) => total + part.ofMap, 0);
      expect(sum).toBeLessThanOrEqual(1 + 1e-6);
      for (const part of parts.values()) for (const run of part.runs) expect(run.mass).toBeGreaterThan(0);
    }),
    { seed: 3, numRuns: 25 },
  );
});

test('taking a spot away takes away what it was said to add', () => {
  const cache = createHazardCache();
  const hazards = cache.hazards(sample.map);
  const whole = (each: typeof hazards): number =>
    [...each.values()].reduce((sum, hazard) => sum + wholeHazard(hazard), 0);
  const part = spotParts(sample.map, hazards).get('rub-spot:edge');
  const without = whole(createHazardCache().hazards({ ...sample.map, rubSpots: new Map() }));
  expect(1 - without / whole(hazards)).toBeCloseTo(part?.ofMap ?? 0, 3);
});
