import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type ChafeAssumptions, defaultAssumptions } from '#core/chafe/chafe-assumptions.ts';
import { segmentHazard } from '#core/chafe/segment-hazard.ts';
import { bendFactor, inverseCapacity } from '#core/chafe/wear.ts';
import { coverings, segmentTraits } from '#core/map/kinds.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Segment } from '#core/map/records.ts';
import { wallStrokes } from '#core/wire/wall-strokes.ts';
import { clip, onlyRun, spot, straightMap } from './chafe-map.ts';

/** One run with everything that can act on it, a spot beside it, and the figures of judgement to turn. */
const anyCase = fc.record({
  lengthMm: fc.integer({ min: 60, max: 900 }),
  clipAt: fc.double({ min: 0.05, max: 0.95, noNaN: true }),
  covering: fc.constantFrom(...coverings),
  traits: fc.uniqueArray(fc.constantFrom(...segmentTraits), { maxLength: 3 }),
  spareMm: fc.constantFrom(0, 0.5, 3, 15),
  gapMm: fc.integer({ min: 0, max: 25 }),
  side: fc.constantFrom('below', 'level', 'above'),
});
type Drawn = typeof anyCase extends fc.Arbitrary<infer T> ? T : never;
type AnyCase = Omit<Drawn, 'spareMm'> & { readonly spareMm: number };
const more = fc.double({ min: 1.01, max: 4, noNaN: true });

function mapOfCase(each: AnyCase, changes: Partial<Segment> = {}): MapDocument {
  const marked = spot('edge', each.lengthMm / 2, 10, {
    clearanceMm: each.gapMm,
    side: each.side as 'below' | 'level' | 'above',
  });
  return straightMap(
    each.lengthMm,
    {
      covering: each.covering,
      traits: each.traits,
      clips: [clip('a', each.clipAt * each.lengthMm)],
      measuredLengthMm: each.lengthMm + each.spareMm,
      ...changes,
    },
    [marked],
  );
}

const perCell = (map: MapDocument, assumptions: ChafeAssumptions = defaultAssumptions): readonly number[] => [
  ...(segmentHazard(map, onlyRun(map), assumptions)?.perMm ?? []),
];

function expectNowhereLower(after: readonly number[], before: readonly number[]): void {
  expect(after.length).toBe(before.length);
  after.forEach((density, cell) => {
    expect(density).toBeGreaterThanOrEqual((before[cell] as number) * (1 - 1e-9));
  });
}

const trial = { seed: 1_208, numRuns: 150 };
function neverLowers(change: (usual: ChafeAssumptions, factor: number) => ChafeAssumptions): void {
  fc.assert(
    fc.property(anyCase, more, (each, factor) => {
      const map = mapOfCase(each);
      expectNowhereLower(perCell(map, change(defaultAssumptions, factor)), perCell(map));
    }),
    trial,
  );
}

describe('the hazard of a run never falls anywhere', () => {
  test('with more spare loom, cells being of one count', () => {
    fc.assert(
      fc.property(anyCase, more, (each, factor) => {
        // Spare loom lengthens the wire, and with it the count of cells: both get that of the longer.
        const longer = { ...each, spareMm: (each.spareMm + 1) * factor };
        const longestCellMm = (each.lengthMm + longer.spareMm) / 40;
        const fixed = { ...defaultAssumptions, longestCellMm };
        const before = perCell(mapOfCase(each), {
          ...fixed,
          longestCellMm: (each.lengthMm + each.spareMm) / 40,
        });
        expectNowhereLower(perCell(mapOfCase(longer), fixed), before);
      }),
      trial,
    );
  });

  test('with more steps or heavier feet', () => {
    neverLowers((usual, factor) => ({
      ...usual,
      foot: { ...usual.foot, stepsPerHour: usual.foot.stepsPerHour * factor },
    }));
    neverLowers((usual, factor) => ({
      ...usual,
      foot: { ...usual.foot, pressureMPa: usual.foot.pressureMPa * factor },
    }));
  });

  test('when seat and door move more often', () => {
    neverLowers((usual, factor) => ({
      ...usual,
      seat: { ...usual.seat, cyclesPerHour: usual.seat.cyclesPerHour * factor },
      flex: { ...usual.flex, cyclesPerHour: usual.flex.cyclesPerHour * factor },
    }));
  });

  test('when water or heat wears the wall faster', () => {
    neverLowers((usual, factor) => ({ ...usual, wetFactor: usual.wetFactor * factor }));
    neverLowers((usual, factor) => ({ ...usual, hotFactor: usual.hotFactor * factor }));
  });

  test('when covers stand fewer strokes or are missing in more places', () => {
    const covers = (
      usual: ChafeAssumptions,
      change: (cover: { strokes: number; bypass: number }) => object,
    ) =>
      Object.fromEntries(
        Object.entries(usual.protection).map(([name, cover]) => [name, { ...cover, ...change(cover) }]),
      ) as unknown as ChafeAssumptions['protection'];
    neverLowers((usual, factor) => ({
      ...usual,
      protection: covers(usual, ({ strokes }) => ({ strokes: strokes / factor })),
    }));
    neverLowers((usual, factor) => ({
      ...usual,
      protection: covers(usual, ({ bypass }) => ({ bypass: Math.min(1, bypass * factor) })),
    }));
  });

  test('when an edge or a clip of the loom is sharper', () => {
    neverLowers((usual, factor) => ({
      ...usual,
      edgeSeverity: { ...usual.edgeSeverity, 'raw-edge': usual.edgeSeverity['raw-edge'] * factor },
    }));
    neverLowers((usual, factor) => ({
      ...usual,
      surfaceSeverity: { ...usual.surfaceSeverity, clip: usual.surfaceSeverity.clip * factor },
    }));
  });
});

describe('a wall lasts less long', () => {
  test('the tighter the bend beyond ten diameters, and not at all longer within them', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 2, max: 30, noNaN: true }),
        fc.double({ min: 1, max: 500, noNaN: true }),
        more,
        (d, r, factor) => {
          expect(bendFactor(d, r / factor)).toBeGreaterThanOrEqual(bendFactor(d, r));
          expect(bendFactor(d * factor, r)).toBeGreaterThanOrEqual(bendFactor(d, r));
          expect(bendFactor(d, r)).toBeGreaterThanOrEqual(1);
        },
      ),
      trial,
    );
  });

  test('the thinner the wire, size by size and class by class', () => {
    const sizes = [0.22, 0.35, 0.5, 0.75, 1, 1.5, 2.5, 4, 6];
    for (let i = 1; i < sizes.length; i++) {
      const [thin, thick] = [sizes[i - 1] as number, sizes[i] as number];
      expect(wallStrokes({ conductorMm2: thin, insulation: 'thin-wall' })).toBeLessThan(
        wallStrokes({ conductorMm2: thick, insulation: 'thin-wall' }),
      );
    }
    for (const mm2 of sizes.slice(2)) {
      expect(wallStrokes({ conductorMm2: mm2, insulation: 'thick-wall' })).toBeGreaterThan(
        wallStrokes({ conductorMm2: mm2, insulation: 'thin-wall' }),
      );
    }
  });

  test('the fewer strokes wall and cover stand and the more places lack the cover', () => {
    const strokes = fc.double({ min: 10, max: 20_000, noNaN: true });
    fc.assert(
      fc.property(
        strokes,
        strokes,
        fc.double({ min: 0, max: 0.9, noNaN: true }),
        more,
        (wall, cover, bypass, factor) => {
          const now = inverseCapacity(wall, { strokes: cover, bypass });
          expect(inverseCapacity(wall / factor, { strokes: cover, bypass })).toBeGreaterThan(now);
          expect(inverseCapacity(wall, { strokes: cover / factor, bypass })).toBeGreaterThan(now);
          expect(inverseCapacity(wall, { strokes: cover, bypass: bypass + 0.1 })).toBeGreaterThan(now);
        },
      ),
      trial,
    );
  });
});
