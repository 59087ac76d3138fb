const stepsMm = [1, 10, 100, 1000, 10_000];

/** The finest step of the millimetre grid, in mm, whose lines stay at least 9 px apart. */
export function gridStepMm(pxPerMm: number): number {
  return stepsMm.find((step) => step * pxPerMm >= 9) ?? 10_000;
}
