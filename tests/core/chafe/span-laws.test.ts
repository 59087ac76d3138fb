import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { defaultAssumptions } from '#core/chafe/chafe-assumptions.ts';
import { rubWork } from '#core/chafe/rub-work.ts';
import { spanDrive } from '#core/chafe/span-drive.ts';

/**
 * How rubbing work must move when one thing about a span changes and all else stays; the whole hazard is this
 * work times factors that are tried elsewhere.
 */
const anySpan = fc.record({
  spanMm: fc.double({ min: 40, max: 2_500, noNaN: true }),
  kgPerMetre: fc.double({ min: 0.003, max: 0.6, noNaN: true }),
  stiffnessNMm2: fc.double({ min: 50, max: 2e6, noNaN: true }),
  serviceLevel: fc.double({ min: 0.05, max: 1, noNaN: true }),
  quality: fc.double({ min: 2, max: 15, noNaN: true }),
  clearanceMm: fc.double({ min: -6, max: 60, noNaN: true }),
  shape: fc.double({ min: 0.3, max: 1, noNaN: true }),
  tauMm: fc.double({ min: 1, max: 8, noNaN: true }),
  forceN: fc.oneof(fc.constant(0), fc.double({ min: 0.1, max: 5, noNaN: true })),
  support: fc.constantFrom('pinned', 'fixed-pinned', 'fixed'),
});
type AnySpan = typeof anySpan extends fc.Arbitrary<infer T> ? T : never;

function work(span: AnySpan): number {
  const ride = {
    ...defaultAssumptions.ride,
    serviceLevel: span.serviceLevel,
    quality: span.quality,
    support: span.support as 'pinned' | 'fixed-pinned' | 'fixed',
  };
  return rubWork(spanDrive(span, span.spanMm, 0, ride, defaultAssumptions.motionCap), span);
}

const more = fc.double({ min: 1, max: 3, noNaN: true });
const runs = { seed: 431, numRuns: 5_000 };

function neverFalls(change: (span: AnySpan, factor: number) => AnySpan): void {
  fc.assert(
    fc.property(anySpan, more, (span, factor) => {
      const before = work(span);
      expect(work(change(span, factor))).toBeGreaterThanOrEqual(before * (1 - 1e-9));
    }),
    runs,
  );
}

describe('rubbing never falls', () => {
  test('when the clip gap grows', () => {
    neverFalls((span, factor) => ({ ...span, spanMm: span.spanMm * factor }));
  });
  test('when the clearance shrinks', () => {
    neverFalls((span, factor) => ({ ...span, clearanceMm: span.clearanceMm - (factor - 1) * 5 }));
  });
  test('when the ends hold less', () => {
    neverFalls((span) => ({ ...span, support: span.support === 'fixed' ? 'fixed-pinned' : 'pinned' }));
  });
  test('when the loom is heavier', () => {
    neverFalls((span, factor) => ({ ...span, kgPerMetre: span.kgPerMetre * factor }));
  });
  test('when the loom is softer, within and beyond its bounds', () => {
    neverFalls((span, factor) => ({ ...span, stiffnessNMm2: span.stiffnessNMm2 / factor }));
  });
  test('when the road is rougher', () => {
    neverFalls((span, factor) => ({ ...span, serviceLevel: span.serviceLevel * factor }));
  });
  test('when the span rings longer', () => {
    neverFalls((span, factor) => ({ ...span, quality: span.quality * factor }));
  });
  test('towards the middle of the span', () => {
    neverFalls((span, factor) => ({ ...span, shape: Math.min(1, span.shape * factor) }));
  });
  test('when the loom is drawn tighter round what it touches', () => {
    neverFalls((span, factor) => ({ ...span, forceN: span.forceN * factor + (factor - 1) }));
  });
  test('when a gap is less well known', () => {
    fc.assert(
      fc.property(anySpan, more, (span, factor) => {
        const gap = { ...span, clearanceMm: Math.abs(span.clearanceMm) };
        expect(work({ ...gap, tauMm: gap.tauMm * factor })).toBeGreaterThanOrEqual(work(gap) * (1 - 1e-9));
      }),
      runs,
    );
  });
});
