import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bareBody } from '#core/chafe/bare-body.ts';
import { type ChafeAssumptions, defaultAssumptions } from '#core/chafe/chafe-assumptions.ts';
import { listedCauses } from '#core/chafe/hazard-sums.ts';
import type { MechanismHazard } from '#core/chafe/mechanism-hazard.ts';
import { rubSpots } from '#core/chafe/rub-spots.ts';
import { type RunContext, runContext } from '#core/chafe/run-context.ts';
import { runSurroundings } from '#core/chafe/run-surroundings.ts';
import { spansOfRun } from '#core/chafe/span.ts';
import type { Segment } from '#core/map/records.ts';
import type { Bundle } from '#core/wire/bundle.ts';
import { randomMap } from '#tests/generated/random-map.ts';

/** How the rubbing of whole invented cars must move, cell by cell, when one thing changes and all else stays. */
const anyCar = fc.integer({ min: 1, max: 10_000 }).map((seed) => randomMap(seed, { runs: 6, rubSpots: 6 }));
const more = fc.double({ min: 1.05, max: 4, noNaN: true });
const cars = { seed: 2_611, numRuns: 25 };

type Change = (run: RunContext, factor: number) => RunContext;

function runsOf(map: ReturnType<typeof randomMap>, change: (segment: Segment) => Segment = (each) => each) {
  return [...map.segments.values()].map(change).flatMap((segment) => {
    const around = runSurroundings(map, segment, defaultAssumptions);
    return around ? [runContext(segment, around, defaultAssumptions)] : [];
  });
}

function cellsOf(run: RunContext, causes: readonly MechanismHazard[]): Float64Array {
  const cells = new Float64Array(run.cellCount);
  for (const { firstCell, perMm } of causes) {
    for (let i = 0; i < perMm.length; i++) {
      cells[firstCell + i] = (cells[firstCell + i] as number) + (perMm[i] as number);
    }
  }
  return cells;
}

const rubbing = (run: RunContext) => cellsOf(run, listedCauses(run, [bareBody, rubSpots]));

/** The smallest ratio of two lists of densities, cell by cell. */
function leastRatio(after: Float64Array, before: Float64Array): number {
  let least = Number.POSITIVE_INFINITY;
  before.forEach((was, cell) => {
    if (was > 0) least = Math.min(least, (after[cell] as number) / was);
  });
  return least;
}

/** Tails read from a table are up to a millionth off. */
const alike = 1e-6;

function neverFalls(change: Change): void {
  fc.assert(
    fc.property(anyCar, more, (map, factor) => {
      for (const run of runsOf(map)) {
        expect(leastRatio(rubbing(change(run, factor)), rubbing(run))).toBeGreaterThanOrEqual(1 - alike);
      }
    }),
    cars,
  );
}

/** The same run with another bundle in it. */
function withBundle(run: RunContext, bundle: Bundle): RunContext {
  return { ...run, spans: spansOfRun(run.segment, run.around, bundle, run.assumptions) };
}

/** The same run under other constants of motion. */
function withConstants(run: RunContext, changes: Partial<ChafeAssumptions>): RunContext {
  const assumptions = { ...run.assumptions, ...changes };
  const spans = spansOfRun(run.segment, run.around, run.through.bundle, assumptions);
  return { ...run, assumptions, spans };
}

describe('on invented cars rubbing falls nowhere', () => {
  test('when the loom is softer, from its mean to wires that slip freely', () => {
    neverFalls((run, factor) => {
      const { bundle } = run.through;
      const { slipping, mean, stuck } = bundle.stiffnessNMm2;
      const softer = Math.max(slipping, mean / factor);
      return withBundle(run, { ...bundle, stiffnessNMm2: { slipping, mean: softer, stuck } });
    });
  });

  test('when the loom is heavier', () => {
    neverFalls((run, factor) => {
      const { bundle } = run.through;
      return withBundle(run, { ...bundle, kgPerMetre: bundle.kgPerMetre * factor });
    });
  });

  test('when the road is rougher or a span rings longer', () => {
    neverFalls((run, factor) =>
      withConstants(run, {
        ride: { ...run.assumptions.ride, serviceLevel: run.assumptions.ride.serviceLevel * factor },
      }),
    );
    neverFalls((run, factor) =>
      withConstants(run, {
        ride: { ...run.assumptions.ride, quality: run.assumptions.ride.quality * factor },
      }),
    );
  });

  test('when fixings hold less', () => {
    const held = (support: 'fixed' | 'fixed-pinned' | 'pinned') => (run: RunContext) =>
      rubbing(withConstants(run, { ride: { ...run.assumptions.ride, support } }));
    fc.assert(
      fc.property(anyCar, (map) => {
        for (const run of runsOf(map)) {
          const [most, some, least] = [held('fixed')(run), held('fixed-pinned')(run), held('pinned')(run)];
          expect(leastRatio(some, most)).toBeGreaterThanOrEqual(1 - alike);
          expect(leastRatio(least, some)).toBeGreaterThanOrEqual(1 - alike);
        }
      }),
      cars,
    );
  });

  test('when a clear gap is less well known', () => {
    fc.assert(
      fc.property(anyCar, more, (map, factor) => {
        // No slack and no sag towards the spot: whatever has a gap keeps it.
        const above = {
          ...map,
          rubSpots: new Map(
            [...map.rubSpots].map(([id, spot]) => [
              id,
              { ...spot, side: 'above' as const, clearanceMm: 1 + (spot.clearanceMm ?? 0) },
            ]),
          ),
        };
        for (const run of runsOf(above)) {
          if (run.segment.traits.includes('drawn-tight')) continue;
          const spots = (each: RunContext) =>
            cellsOf(
              each,
              listedCauses(each, [rubSpots]).filter(({ cause }) => cause === 'rub-spot'),
            );
          const doubt = { clearanceSigmaMm: defaultAssumptions.clearanceSigmaMm * factor };
          expect(leastRatio(spots(withConstants(run, doubt)), spots(run))).toBeGreaterThanOrEqual(1 - alike);
        }
      }),
      cars,
    );
  });

  test('towards the middle of every span, all of it worn alike', () => {
    fc.assert(
      fc.property(anyCar, (map) => {
        for (const run of runsOf(map)) {
          const wear = new Float64Array(run.cellCount + 1).fill(1);
          const held = { ...run, wear, assumptions: { ...run.assumptions, clipGoneShare: 0 } };
          for (const { fromMm, toMm } of run.spans) {
            const middle = (fromMm + toMm) / 2 / run.cellMm - 0.5;
            const cells = cellsOf(held, listedCauses(held, [bareBody]));
            // Whole cells inside the span.
            const first = Math.max(0, Math.ceil(fromMm / run.cellMm + 1e-6));
            const end = Math.min(run.cellCount, Math.floor(toMm / run.cellMm - 1e-6));
            for (let cell = first + 1; cell < end; cell++) {
              const [before, here] = [cells[cell - 1] as number, cells[cell] as number];
              const nearer = Math.abs(cell - middle) <= Math.abs(cell - 1 - middle);
              expect(nearer ? here / before : before / here).toBeGreaterThanOrEqual(1 - 1e-9);
            }
          }
        }
      }),
      { ...cars, numRuns: 12 },
    );
  });

  test('when a clip is gone', () => {
    fc.assert(
      fc.property(anyCar, fc.nat(), (map, pick) => {
        const gone = (segment: Segment): Segment => {
          const at = segment.clips.length > 0 ? pick % segment.clips.length : -1;
          return {
            ...segment,
            clips: segment.clips.map((clip, i) => (i === at ? { ...clip, missing: true } : clip)),
          };
        };
        const before = runsOf(map);
        runsOf(map, gone).forEach((run, i) => {
          // Motion left at a clip is a share of its span's, which allows a rise of a few parts in 1e5.
          expect(leastRatio(rubbing(run), rubbing(before[i] as RunContext))).toBeGreaterThanOrEqual(1 - 1e-3);
        });
      }),
      cars,
    );
  });
});
