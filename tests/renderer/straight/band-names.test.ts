import fc from 'fast-check';
import { expect, test } from 'vitest';
import { placeBandNames } from '#renderer/straight/band-names.ts';
import { textWidthPx } from '#renderer/straight/place-labels.ts';

const band = (name: string, fromMm: number, toMm: number, lane = 0) => ({
  key: `${name} ${fromMm}`,
  name,
  fromMm,
  toMm,
  lane,
});

test('bands wide enough for their names stay on one row', () => {
  const { bands, rowCount } = placeBandNames(
    [band('Seat', 0, 1000), band('Left sill', 1000, 2000)],
    0.2,
    400,
  );
  expect(rowCount).toBe(1);
  expect(bands.map(({ text }) => text)).toEqual(['Seat', 'Left sill']);
});

test('a short band’s name runs on over its neighbour’s place, and the neighbour goes to a second row', () => {
  const { bands, rowCount } = placeBandNames(
    [band('Glovebox', 0, 200), band('Left kick trim', 200, 500), band('Tread plate', 500, 2000)],
    0.2,
    400,
  );
  expect(rowCount).toBe(2);
  expect(bands.find(({ row }) => row === 1)?.text).toBe('Left kick trim');
  expect(bands.map(({ text }) => text).sort()).toEqual(['Glovebox', 'Left kick trim', 'Tread plate']);
});

test('names on one row never run into each other or over the right end, however many bands there are', () => {
  const cuts = fc.uniqueArray(fc.integer({ min: 0, max: 5_000 }), { minLength: 2, maxLength: 14 });
  fc.assert(
    fc.property(cuts, fc.integer({ min: 1, max: 24 }), (at, letters) => {
      const edges = [...at].sort((a, b) => a - b);
      const made = edges.slice(1).map((to, i) => band('m'.repeat(letters), edges[i] as number, to));
      const { bands, rowCount } = placeBandNames(made, 0.15, 760);
      for (let row = 0; row < rowCount; row++) {
        const named = bands.filter((each) => each.row === row && each.text !== '');
        for (const [i, each] of named.entries()) {
          const end = each.textPx + textWidthPx(each.text);
          expect(end).toBeLessThanOrEqual(760.001);
          const next = named[i + 1];
          if (next) expect(end).toBeLessThanOrEqual(next.textPx + 0.001);
        }
      }
    }),
    { seed: 41 },
  );
});
