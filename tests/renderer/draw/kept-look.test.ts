import { expect, test } from 'vitest';
import { fitCamera, toPlan } from '#renderer/board/camera.ts';
import { cameraOf, lookOf, readLook } from '#renderer/places/draw/use-kept-camera.ts';

const car = { minXMm: 0, minYMm: -880, maxXMm: 4750, maxYMm: 880 };
const small = { widthPx: 560, heightPx: 640 };
const larger = { widthPx: 1600, heightPx: 1200 };

test('a kept look shows the same place in the middle of a window of another size', () => {
  const camera = { pxPerMm: 0.4, xPx: -120, yPx: 260 };
  const look = readLook(JSON.stringify(lookOf(camera, small)));
  const again = look && cameraOf(look, larger, car);
  expect(again?.pxPerMm).toBe(0.4);
  const middle = again && toPlan(again, { xPx: 800, yPx: 600 });
  expect(middle?.xMm).toBeCloseTo((280 + 120) / 0.4, 9);
  expect(middle?.yMm).toBeCloseTo((260 - 320) / 0.4, 9);
});

test('a whole car looked at in a small window fills a large one the next day', () => {
  const look = lookOf(fitCamera(car, small), small);
  expect(cameraOf(look, larger, car).pxPerMm).toBeCloseTo(fitCamera(car, larger).pxPerMm, 9);
});

test('a look kept before windows were noted is shown at its scale', () => {
  const look = readLook('{"pxPerMm":0.3,"xMm":10,"yMm":20}');
  expect(look && cameraOf(look, larger, car).pxPerMm).toBe(0.3);
});

test('kept text that makes no sense is as good as none', () => {
  expect(readLook(null)).toBeNull();
  expect(readLook('{"pxPerMm":0,"xMm":1,"yMm":2}')).toBeNull();
  expect(readLook('not json')).toBeNull();
});
