import { expect, test } from 'vitest';
import { gridStepMm, paperStepMm } from '#renderer/board/grid-step.ts';

test('the whole of a car in a window of usual width has a grid of fifty millimetres', () => {
  expect(gridStepMm(1100 / 4500)).toBe(50);
});

test('grid lines stay nine pixels apart or more, and less than twenty-three, between a close look and a lorry', () => {
  for (let pxPerMm = 0.01; pxPerMm < 9; pxPerMm *= 1.07) {
    const px = gridStepMm(pxPerMm) * pxPerMm;
    expect(px, `${pxPerMm} px/mm`).toBeGreaterThanOrEqual(9);
    expect(px, `${pxPerMm} px/mm`).toBeLessThan(22.5001);
  }
});

test('every drawn line of the grid is a place a point is drawn to', () => {
  for (let pxPerMm = 0.01; pxPerMm < 9; pxPerMm *= 1.07) {
    expect(paperStepMm(pxPerMm) % gridStepMm(pxPerMm), `${pxPerMm} px/mm`).toBe(0);
    expect(paperStepMm(pxPerMm) * pxPerMm).toBeLessThan(90.0001);
  }
  expect(paperStepMm(1100 / 4500)).toBe(100);
});

test('a step never falls below a millimetre or grows beyond ten metres', () => {
  expect(gridStepMm(40)).toBe(1);
  expect(gridStepMm(0.0001)).toBe(10_000);
  expect(paperStepMm(0.0001)).toBe(10_000);
});
