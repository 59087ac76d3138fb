import { expect, test } from 'vitest';
import { pictureFrame, picturePath } from '#renderer/places/start/picture-path.ts';

test('a small picture turns y over: the car’s right side is up when its front is to the left', () => {
  expect(pictureFrame([[0, -800, 4000, 900]])).toEqual({ viewBox: '-120 -1020 4240 1940' });
});

test('a map with nothing drawn has no picture to frame', () => {
  expect(pictureFrame([])).toBeNull();
  expect(pictureFrame([[]])).toBeNull();
});

test('a line is drawn through all its points', () => {
  expect(picturePath([0, 1, 2, 3, 4, 5])).toBe('M0 1L2 3L4 5');
  expect(picturePath([])).toBe('');
});
