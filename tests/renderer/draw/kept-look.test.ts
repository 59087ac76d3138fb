import { expect, test } from 'vitest';
import { toPlan } from '#renderer/board/camera.ts';
import { cameraOf, lookOf, readLook } from '#renderer/places/draw/use-kept-camera.ts';

test('a kept look shows the same place in the middle of a window of another size', () => {
  const camera = { pxPerMm: 0.4, xPx: -120, yPx: 260 };
  const look = readLook(JSON.stringify(lookOf(camera, { widthPx: 560, heightPx: 640 })));
  const larger = { widthPx: 1600, heightPx: 1200 };
  const again = look && cameraOf(look, larger);
  expect(again?.pxPerMm).toBe(0.4);
  const middle = again && toPlan(again, { xPx: 800, yPx: 600 });
  expect(middle?.xMm).toBeCloseTo((280 + 120) / 0.4, 9);
  expect(middle?.yMm).toBeCloseTo((260 - 320) / 0.4, 9);
});

test('kept text that makes no sense is as good as none', () => {
  expect(readLook(null)).toBeNull();
  expect(readLook('{"pxPerMm":0,"xMm":1,"yMm":2}')).toBeNull();
  expect(readLook('not json')).toBeNull();
});
