import { copper } from '../wire/copper.ts';

/**
 * Strain of a strand bent to a radius: d / 2R (plane geometry, strands free to slip).
 * @example
 * bendingStrain(0.2, 25) // => 0.004
 */
export function bendingStrain(strandMm: number, radiusMm: number): number {
  return strandMm / (2 * radiusMm);
}

/** Manson's universal slopes: strain range a copper strand stands N times. */
const strainRange = (cycles: number) =>
  3.5 * (copper.strengthNPerMm2 / copper.youngNPerMm2) * cycles ** -0.12 +
  copper.ductility ** 0.6 * cycles ** -0.6;

/**
 * Bends a copper strand stands at a strain range: Manson's universal slopes solved for N by halving in
 * log N (from memory). Held between 1 and 1e12.
 * @example
 * bendsToBreak(0.01) // => 6330.95
 */
export function bendsToBreak(strain: number): number {
  let low = 0;
  let high = Math.log(1e12);
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (strainRange(Math.exp(middle)) > strain) low = middle;
    else high = middle;
  }
  return Math.exp((low + high) / 2);
}
