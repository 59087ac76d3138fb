import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fitCamera, toPlan, toScreen, zoomAt } from '#renderer/board/camera.ts';
import { resizedCamera } from '#renderer/board/resized-camera.ts';

const car = { minXMm: 0, minYMm: -880, maxXMm: 4750, maxYMm: 880 };
const large = { widthPx: 980, heightPx: 800 };
const small = { widthPx: 574, heightPx: 690 };
const corners = [
  { xMm: car.minXMm, yMm: car.minYMm },
  { xMm: car.maxXMm, yMm: car.maxYMm },
];

test('a window made smaller still shows the whole car', () => {
  const sizes = fc.record({
    widthPx: fc.integer({ min: 300, max: 2560 }),
    heightPx: fc.integer({ min: 200, max: 1440 }),
  });
  fc.assert(
    fc.property(sizes, sizes, (before, after) => {
      const seen = resizedCamera({ camera: fitCamera(car, before), size: before }, after, car);
      for (const corner of corners) {
        const { xPx, yPx } = toScreen(seen, corner);
        expect(Math.min(xPx, after.widthPx - xPx, yPx, after.heightPx - yPx)).toBeGreaterThan(-0.001);
      }
    }),
    { seed: 20261125, numRuns: 200 },
  );
});

test('a close look keeps its middle, and comes back as it was when the window does', () => {
  const close = zoomAt(fitCamera(car, large), { xPx: 700, yPx: 300 }, 4);
  const look = { camera: close, size: large };
  const seen = resizedCamera(look, small, car);
  const before = toPlan(close, { xPx: large.widthPx / 2, yPx: large.heightPx / 2 });
  const after = toPlan(seen, { xPx: small.widthPx / 2, yPx: small.heightPx / 2 });
  expect(after.xMm).toBeCloseTo(before.xMm, 6);
  expect(after.yMm).toBeCloseTo(before.yMm, 6);
  expect(seen.pxPerMm).toBeLessThan(close.pxPerMm);
  expect(resizedCamera(look, large, car)).toBe(close);
});

test('a bar that takes one line more does not move the paper', () => {
  const look = { camera: fitCamera(car, large), size: large };
  expect(resizedCamera(look, { widthPx: 980, heightPx: 780 }, car)).toBe(look.camera);
});
