const decadesMm = [1, 10, 100, 1000];
const stepsMm = decadesMm.flatMap((decade) => [decade, 2 * decade, 5 * decade]);
const coarsestMm = 10_000;
/** Nearer than this two lines of the grid, or two places a point is drawn to, are hard to tell apart. */
const leastPx = 9;

const finest = (steps: readonly number[], pxPerMm: number): number =>
  steps.find((step) => step * pxPerMm >= leastPx) ?? coarsestMm;

/** What a point is drawn to with the grid on, in mm: the finest of 1, 2 or 5 and their tens that stays 9 px apart. */
export function gridStepMm(pxPerMm: number): number {
  return finest(stepsMm, pxPerMm);
}

/** Between two lines of the grid as it is drawn, in mm: the finest power of ten that stays 9 px apart, so that the paper stays quiet. */
export function paperStepMm(pxPerMm: number): number {
  return finest(decadesMm, pxPerMm);
}
