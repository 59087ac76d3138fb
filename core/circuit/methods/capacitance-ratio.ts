/**
 * Distance from end A to an open, from the capacitance seen at each end: L CA / (CA + CB). Assumes an
 * even lay; lead stray must be taken off first. Unit of the answer: that of the length. (Telephone cable
 * tester practice, locating opens by ratio.)
 * @example
 * capacitanceRatio({ fromA: 100, fromB: 400, length: 10 }) // => 2
 */
export function capacitanceRatio(measured: {
  readonly fromA: number;
  readonly fromB: number;
  readonly length: number;
}): number {
  return (measured.length * measured.fromA) / (measured.fromA + measured.fromB);
}

/**
 * Capacitance per metre of a round wire over a conducting plane, in pF/m:
 * 2 pi e0 er / acosh(height / radius). (Textbook; same value in published capacitance tables.)
 * @example
 * wireOverPlanePicofaradsPerMetre({ heightMm: 1000, radiusMm: 0.5, relativePermittivity: 1 }) // => 6.70752
 */
export function wireOverPlanePicofaradsPerMetre(shape: {
  readonly heightMm: number;
  readonly radiusMm: number;
  readonly relativePermittivity: number;
}): number {
  const vacuumPicofaradsPerMetre = 8.8541878128;
  return (
    (2 * Math.PI * vacuumPicofaradsPerMetre * shape.relativePermittivity) /
    Math.acosh(shape.heightMm / shape.radiusMm)
  );
}
