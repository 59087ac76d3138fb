import fc from 'fast-check';
import { expect, test } from 'vitest';
import { toScreen } from '#renderer/board/camera.ts';
import { cameraShowing } from '#renderer/places/draw/camera-showing.ts';
import { besideFindBox } from '#renderer/places/draw/find/beside-find-box.ts';
import { findables, findThings } from '#renderer/places/draw/find/find-things.ts';
import { randomMap } from '#tests/generated/random-map.ts';
import { sample } from '#tests/sample.ts';

const all = findables(sample.map);
const found = (typed: string): readonly string[] => findThings(all, typed).map(({ id }) => id);

test('things of every kind are found by name, kind and route', () => {
  expect(found('seat switch')).toEqual(['circuit:seat-switch', 'node:far', 'segment:rear']);
  expect(found('tread')).toEqual(['panel:tread']);
  expect(found('raw edge')).toEqual(['rub-spot:edge']);
  expect(found('inline plug')).toEqual(['node:middle']);
  expect(found('left sill').filter((id) => id.startsWith('segment:'))).toHaveLength(3);
  expect(found('fixing')).toEqual(['clip:a', 'clip:b']);
});

test('what begins with the words comes before what only holds them', () => {
  const [first] = found('seat');
  expect(first === 'circuit:seat-switch' || first === 'node:east').toBe(true);
  expect(found('seat').indexOf('panel:seat')).toBeGreaterThan(found('seat').indexOf('node:far'));
});

test('accents and case do not matter, nothing typed finds nothing, nonsense neither', () => {
  expect(found('SÉAT rail')).toEqual(['rub-spot:edge']);
  expect(found('   ')).toEqual([]);
  expect(found('zzz')).toEqual([]);
});

test('whatever is on a map is found by its whole name', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 200 }), (seed) => {
      const things = findables(randomMap(seed));
      for (const thing of things.slice(0, 30)) {
        if (thing.name.trim() === '') continue;
        expect(findThings(things, thing.name).some(({ id }) => id === thing.id)).toBe(true);
      }
    }),
    { seed: 5, numRuns: 15 },
  );
});

test('what is found is shown where the box does not cover it', () => {
  const at = { xMm: 1_000, yMm: 200 };
  const box = { minXMm: at.xMm, maxXMm: at.xMm, minYMm: at.yMm, maxYMm: at.yMm };
  for (const widthPx of [580, 1_000]) {
    const screen = { widthPx, heightPx: 800 };
    const { size, topPx } = besideFindBox(screen);
    for (const xPx of [-4_000, -500, 0, 300]) {
      const camera = cameraShowing(box, { pxPerMm: 0.5, xPx, yPx: 200 }, size, topPx);
      const seen = toScreen(camera, at);
      expect(seen.xPx).toBeGreaterThan(0);
      expect(seen.xPx).toBeLessThan(size.widthPx);
      expect(seen.yPx).toBeGreaterThan(topPx);
      expect(seen.yPx).toBeLessThan(screen.heightPx);
    }
  }
});
