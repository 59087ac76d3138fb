/**
 * ISO 16750-3, passenger car, sprung mass: acceleration density (m/s2)2/Hz at Hz. From memory; the points
 * integrate to the standard's stated 27.8 m/s2.
 */
export const bodyProfile: readonly { readonly hz: number; readonly density: number }[] = [
  { hz: 10, density: 20 },
  { hz: 55, density: 6.5 },
  { hz: 180, density: 0.25 },
  { hz: 300, density: 0.25 },
  { hz: 360, density: 0.14 },
  { hz: 1000, density: 0.14 },
];

const pieces = bodyProfile.slice(1).map((end, i) => {
  const start = bodyProfile[i] as (typeof bodyProfile)[number];
  return { start, end, slope: Math.log(end.density / start.density) / Math.log(end.hz / start.hz) };
});

/**
 * Acceleration density of the body in (m/s2)2/Hz: log-log between the points of ISO 16750-3 and level
 * beyond them.
 * @example
 * bodyDensity(20) // => 12.6638
 */
export function bodyDensity(hz: number): number {
  for (const { start, end, slope } of pieces) {
    if (hz <= start.hz) return start.density;
    if (hz < end.hz) return start.density * (hz / start.hz) ** slope;
  }
  return 0.14;
}

/**
 * Root mean square of the whole profile in m/s2, integrated exactly in each log-log piece.
 * @example
 * profileRms() // => 27.7837
 */
export function profileRms(): number {
  let square = 0;
  for (const { start, end, slope } of pieces) {
    square += (end.density * end.hz - start.density * start.hz) / (slope + 1);
  }
  return Math.sqrt(square);
}

/**
 * Miles' equation: rms acceleration of a lightly damped oscillator on a base shaken with density W,
 * sqrt(pi/2 f Q W), in the unit of sqrt(W Hz) (NASA GSFC FEMCI, "Miles' Equation").
 * @example
 * milesAcceleration(30, 5, 9.6932) // => 47.7902
 */
export function milesAcceleration(hz: number, quality: number, density: number): number {
  return Math.sqrt((Math.PI / 2) * hz * quality * density);
}

/**
 * Miles' equation for displacement: sqrt(Q W / (32 pi^3 f^3)), in m for W in (m/s2)2/Hz (NASA GSFC FEMCI).
 * @example
 * milesDisplacement(30, 5, 9.6932) // => 0.00134505
 */
export function milesDisplacement(hz: number, quality: number, density: number): number {
  return Math.sqrt((quality * density) / (32 * Math.PI ** 3 * hz ** 3));
}
