const decadesMm = [1, 10, 100, 1000];
const stepsMm = [...decadesMm.flatMap((decade) => [decade, 2 * decade, 5 * decade]), 10_000];

/** The finest step of the millimetre grid, in mm, of 1, 2 or 5 and their tens, whose lines stay at least 9 px apart. */
export function gridStepMm(pxPerMm: number): number {
  return stepsMm.find((step) => step * pxPerMm >= 9) ?? 10_000;
}
