import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fitCamera, panBy, toPlan, toScreen, viewBox, zoomAt } from '#renderer/board/camera.ts';
import { keyCamera } from '#renderer/board/key-camera.ts';
import { turnWheel } from '#renderer/board/turn-wheel.ts';
import { twoFingerCamera } from '#renderer/board/two-fingers.ts';

const px = fc.integer({ min: -2000, max: 2000 });
const camera = fc.record({ pxPerMm: fc.double({ min: 0.05, max: 8, noNaN: true }), xPx: px, yPx: px });
const screen = fc.record({ xPx: px, yPx: px });
const settings = { seed: 20260106, numRuns: 200 };

test('seen from above with the front to the left, the right side of the car is up', () => {
  const seen = fitCamera(
    { minXMm: 0, minYMm: -800, maxXMm: 4000, maxYMm: 800 },
    { widthPx: 800, heightPx: 600 },
  );
  const front = toScreen(seen, { xMm: 0, yMm: 0 });
  const rear = toScreen(seen, { xMm: 4000, yMm: 0 });
  const right = toScreen(seen, { xMm: 2000, yMm: 800 });
  expect(front.xPx).toBeLessThan(rear.xPx);
  expect(right.yPx).toBeLessThan(front.yPx);
});

test('a place on the plan comes back from the screen where it was', () => {
  fc.assert(
    fc.property(camera, px, px, (seen, xMm, yMm) => {
      const back = toPlan(seen, toScreen(seen, { xMm, yMm }));
      expect(back.xMm).toBeCloseTo(xMm, 6);
      expect(back.yMm).toBeCloseTo(yMm, 6);
    }),
    settings,
  );
});

test('zooming keeps what lies under the pointer where it is', () => {
  fc.assert(
    fc.property(camera, screen, fc.double({ min: 0.2, max: 5, noNaN: true }), (seen, at, factor) => {
      const before = toPlan(seen, at);
      const after = toPlan(zoomAt(seen, at, factor), at);
      expect(after.xMm).toBeCloseTo(before.xMm, 5);
      expect(after.yMm).toBeCloseTo(before.yMm, 5);
    }),
    settings,
  );
});

test('fitting shows the whole of a box', () => {
  const box = { minXMm: 100, minYMm: -900, maxXMm: 4800, maxYMm: 950 };
  const size = { widthPx: 960, heightPx: 700 };
  const seen = viewBox(fitCamera(box, size), size);
  expect(seen.minXMm).toBeLessThan(box.minXMm);
  expect(seen.maxXMm).toBeGreaterThan(box.maxXMm);
  expect(seen.minYMm).toBeLessThan(box.minYMm);
  expect(seen.maxYMm).toBeGreaterThan(box.maxYMm);
});

test('two fingers spread to twice the gap double the scale and keep the plan under their middle', () => {
  const seen = { pxPerMm: 0.5, xPx: 10, yPx: 20 };
  const before = [
    { xPx: 100, yPx: 100 },
    { xPx: 200, yPx: 100 },
  ] as const;
  const after = [
    { xPx: 50, yPx: 140 },
    { xPx: 250, yPx: 140 },
  ] as const;
  const next = twoFingerCamera(seen, before, after);
  expect(next.pxPerMm).toBe(1);
  const under = toPlan(seen, { xPx: 150, yPx: 100 });
  const now = toPlan(next, { xPx: 150, yPx: 140 });
  expect(now.xMm).toBeCloseTo(under.xMm, 9);
  expect(now.yMm).toBeCloseTo(under.yMm, 9);
});

test('a mouse wheel zooms, two fingers on a pad pan, a pinch on the pad zooms', () => {
  const seen = { pxPerMm: 0.5, xPx: 0, yPx: 0 };
  const at = { xPx: 100, yPx: 100 };
  const still = { deltaX: 0, deltaMode: 0, pinch: false, shift: false };
  expect(turnWheel(seen, at, { ...still, deltaY: -120 }).pxPerMm).toBeGreaterThan(0.5);
  expect(turnWheel(seen, at, { ...still, deltaX: 6, deltaY: 3 })).toEqual({ pxPerMm: 0.5, xPx: -6, yPx: -3 });
  expect(turnWheel(seen, at, { ...still, deltaY: 10, pinch: true }).pxPerMm).toBeLessThan(0.5);
});

test('arrows move the view, F shows all, and other keys are left to others', () => {
  const seen = { pxPerMm: 0.5, xPx: 0, yPx: 0 };
  const size = { widthPx: 800, heightPx: 600 };
  const whole = { minXMm: 0, minYMm: -800, maxXMm: 4000, maxYMm: 800 };
  expect(keyCamera(seen, 'ArrowRight', size, whole)).toEqual(panBy(seen, -64, 0));
  expect(keyCamera(seen, 'f', size, whole)).toEqual(fitCamera(whole, size));
  expect(keyCamera(seen, 'q', size, whole)).toBeNull();
});
