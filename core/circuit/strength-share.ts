import type { FaultClass } from '../map/kinds.ts';
import { faultStrengths } from './fault-strength.ts';

/**
 * Share of faults of a class whose resistance is at most so many ohm, before any reading.
 * @example
 * shareBelow('open', 1e7) // => 0.5
 */
export function shareBelow(faultClass: FaultClass, ohms: number): number {
  const { leastOhms, mostOhms, density } = faultStrengths[faultClass];
  const steps = 400;
  const from = Math.log(leastOhms);
  const step = (Math.log(mostOhms) - from) / steps;
  let below = 0;
  let all = 0;
  for (let i = 0; i < steps; i++) {
    const ln = from + (i + 0.5) * step;
    const mass = density(ln);
    all += mass;
    if (ln <= Math.log(ohms)) below += mass;
  }
  return below / all;
}
