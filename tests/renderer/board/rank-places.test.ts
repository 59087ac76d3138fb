import fc from 'fast-check';
import { expect, test } from 'vitest';
import { boardIndex } from '#renderer/board/board-index.ts';
import type { LitStretch } from '#renderer/board/lit.ts';
import { emptyOverlay } from '#renderer/board/overlay.ts';
import { rankHalfHeightPx, rankPlaces } from '#renderer/board/paint/rank-places.ts';
import { sceneOf } from '#renderer/board/scene.ts';
import { boardColours } from '#renderer/theme/tokens.ts';
import { sample } from '#tests/sample.ts';

const size = { widthPx: 900, heightPx: 600 };

const sceneWith = (stretches: readonly LitStretch[]) =>
  sceneOf({
    index: boardIndex(sample.map),
    camera: { pxPerMm: 0.5, xPx: 60, yPx: 300 },
    size,
    colours: boardColours.day,
    lit: {
      stretches: new Map([['segment:middle', stretches]]),
      marks: [],
      panelsOff: new Set(),
      circuitSegments: new Set(['segment:middle']),
      pointed: [],
    },
    selection: [],
    hover: null,
    overlay: emptyOverlay,
    fontFamily: 'sans-serif',
  });

test('a stretch without a rank has no numeral', () => {
  expect(rankPlaces(sceneWith([{ fromMm: 0, toMm: 100, level: 0.4 }]))).toEqual([]);
});

test('the best rank stands above the middle of its stretch', () => {
  const [first] = rankPlaces(sceneWith([{ fromMm: 100, toMm: 300, level: 1, rank: 1 }]));
  expect(first?.xPx).toBe(60 + 700 * 0.5);
  expect(first?.yPx).toBeLessThan(300);
});

test('up to four numerals at one place never cover one another and never leave the board', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 480 }), { minLength: 1, maxLength: 4 }), (starts) => {
      const stretches = starts.map((fromMm, i) => ({ fromMm, toMm: fromMm + 20, level: 0.5, rank: i + 1 }));
      const places = rankPlaces(sceneWith(stretches));
      expect(places).toHaveLength(starts.length);
      for (const [i, a] of places.entries()) {
        expect(a.xPx - a.halfPx).toBeGreaterThanOrEqual(0);
        expect(a.xPx + a.halfPx).toBeLessThanOrEqual(size.widthPx);
        for (const b of places.slice(i + 1)) {
          const apart =
            Math.abs(a.xPx - b.xPx) >= a.halfPx + b.halfPx || Math.abs(a.yPx - b.yPx) >= 2 * rankHalfHeightPx;
          expect(apart).toBe(true);
        }
      }
    }),
    { seed: 20260108, numRuns: 200 },
  );
});
