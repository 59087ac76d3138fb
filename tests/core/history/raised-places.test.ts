import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { hazardAlong } from '#core/chafe/hazard-along.ts';
import type { HazardField } from '#core/chafe/hazard-field.ts';
import { layStraight } from '#core/circuit/circuit-line.ts';
import { raisedPlaces, touchedBy } from '#core/history/raised-places.ts';
import { recentWorks, recentWorkTable, symptoms, symptomTable } from '#core/history/recent-work-table.ts';
import { rank } from '#core/job/rank.ts';
import { faultClasses } from '#core/map/kinds.ts';
import { randomMap } from '#tests/generated/random-map.ts';
import { sample } from '#tests/sample.ts';

const told = fc.record({
  recentWork: fc.uniqueArray(fc.constantFrom(...recentWorks), { maxLength: 2 }),
  symptoms: fc.uniqueArray(fc.constantFrom(...symptoms), { maxLength: 2 }),
});

const perCell = (field: HazardField): number[] =>
  Array.from({ length: field.cellEdgesMm.length - 1 }, (_, cell) => {
    const widthMm = (field.cellEdgesMm[cell + 1] as number) - (field.cellEdgesMm[cell] as number);
    return widthMm * faultClasses.reduce((sum, kind) => sum + (field.byClass[kind][cell] as number), 0);
  });

describe('recent work and the way a fault shows', () => {
  test('every factor raises', () => {
    for (const rules of [...Object.values(recentWorkTable), ...Object.values(symptomTable)]) {
      for (const { factor } of rules) expect(factor).toBeGreaterThan(1);
    }
  });

  test('on any invented car nothing is lowered, and what is raised never loses share', () => {
    let raisedSomewhere = 0;
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 10_000 }), told, (seed, words) => {
        const map = randomMap(seed);
        for (const circuit of map.circuits.values()) {
          const line = layStraight(map, circuit);
          if (!line.ok) continue;
          const field = hazardAlong(map, line.value);
          const before = perCell(field);
          const after = perCell(raisedPlaces(map, line.value, field, words));
          let [touchedBefore, touchedAfter, allBefore, allAfter] = [0, 0, 0, 0];
          before.forEach((mass, cell) => {
            const raised = after[cell] as number;
            expect(raised).toBeGreaterThanOrEqual(mass * (1 - 1e-9));
            allBefore += mass;
            allAfter += raised;
            if (raised <= mass * (1 + 1e-9)) return;
            raisedSomewhere++;
            touchedBefore += mass;
            touchedAfter += raised;
          });
          expect(touchedAfter / allAfter).toBeGreaterThanOrEqual(touchedBefore / allBefore - 1e-9);
        }
      }),
      { seed: 5, numRuns: 60 },
    );
    expect(raisedSomewhere).toBeGreaterThan(100);
  });

  test('work on the seat makes what lies under the seat likelier than before', () => {
    const seen = (recentWork: readonly ('seat' | 'audio')[]) => {
      const ranking = rank(sample.map, { ...sample.job, recentWork: [...recentWork] });
      if (!ranking.ok) throw new Error(ranking.problem.code);
      return ranking.value.posterior.stretches.find(({ fromMm }) => fromMm === 600)?.probability ?? 0;
    };
    expect(seen(['seat'])).toBeGreaterThan(seen([]));
    expect(seen(['audio'])).toBeCloseTo(seen([]), 12);
  });

  test('the length that each answer touches can be said', () => {
    const edges = sample.field.cellEdgesMm;
    expect(
      touchedBy(sample.map, sample.line, edges, { recentWork: ['carpet'], symptoms: ['on-bumps'] }),
    ).toEqual([
      { word: 'carpet', lengthMm: 1000 },
      { word: 'on-bumps', lengthMm: 1500 },
    ]);
  });
});
