import fc from 'fast-check';
import { expect, test } from 'vitest';
import { spacedRanks } from '#renderer/straight/curve-and-loom.tsx';
import { cutToWidth, placeLabels, textWidthPx } from '#renderer/straight/place-labels.ts';

test('names above the loom never overlap and never leave it', () => {
  const label = fc.record({
    text: fc.string({ minLength: 1, maxLength: 24 }),
    xPx: fc.double({ min: 0, max: 900, noNaN: true }),
    precedence: fc.integer({ min: 0, max: 2 }),
  });
  fc.assert(
    fc.property(fc.array(label, { maxLength: 25 }), (labels) => {
      const placed = placeLabels(
        labels.map((each, i) => ({ ...each, key: String(i) })),
        900,
        2,
      );
      for (const one of placed) {
        expect(one.xPx).toBeGreaterThanOrEqual(0);
        expect(one.xPx + textWidthPx(one.text)).toBeLessThanOrEqual(900 + 1e-9);
        for (const other of placed) {
          if (one === other || one.row !== other.row) continue;
          const apart =
            one.xPx >= other.xPx + textWidthPx(other.text) || other.xPx >= one.xPx + textWidthPx(one.text);
          expect(apart).toBe(true);
        }
      }
    }),
    { seed: 417, numRuns: 200 },
  );
});

test('the ends keep their names when there is no room for all', () => {
  const wanted = Array.from({ length: 20 }, (_, i) => ({
    key: String(i),
    text: `Branch number ${i}`,
    xPx: i * 10,
    precedence: i === 0 || i === 19 ? 0 : 2,
  }));
  const keys = placeLabels(wanted, 300, 1).map((label) => label.key);
  expect(keys).toContain('0');
  expect(keys).toContain('19');
});

test('a name too long for its band is cut with a mark, and dropped when nothing of it would be left', () => {
  expect(cutToWidth('Left sill', 200)).toBe('Left sill');
  expect(cutToWidth('Left front tread plate', 100)).toBe('Left front t…');
  expect(cutToWidth('Left front tread plate', 20)).toBe('');
});

test('rank numerals never touch, not at an end either, and the better rank keeps its place', () => {
  const ranks = [
    { rank: 1, stationMm: 1000, worthShowing: true },
    { rank: 12, stationMm: 1010, worthShowing: true },
    { rank: 13, stationMm: 1100, worthShowing: false },
  ];
  const kept = (pxPerMm: number, widthPx: number): readonly number[] =>
    spacedRanks(ranks, pxPerMm, widthPx).map(({ rank }) => rank);
  expect(kept(0.2, 400)).toEqual([1]);
  expect(kept(1, 2_000)).toEqual([1, 13]);
  expect(kept(10, 20_000)).toEqual([1, 12, 13]);
  // All three lie at the right end: pushed in from the edge, 12 and 13 would stand on each other.
  expect(kept(1, 1_020)).toEqual([1]);
  for (const { xPx } of spacedRanks(ranks, 1, 1_100)) expect(xPx).toBeLessThan(1_100);
});
