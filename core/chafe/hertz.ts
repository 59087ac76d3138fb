/**
 * Pressure of a line contact against that at another edge radius: sqrt(r1 / r2) (Hertz, from memory).
 * @example
 * linePressureRatio(2.5, 0.1) // => 5
 */
export function linePressureRatio(fromRadiusMm: number, toRadiusMm: number): number {
  return Math.sqrt(fromRadiusMm / toRadiusMm);
}
