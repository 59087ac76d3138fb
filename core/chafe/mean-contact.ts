import { quickTail, tailsBeyond } from './quick-tail.ts';

/** Clearances nearer together than this share of their doubt are as good as one. */
export const alike = 0.02;
const halfBell = tailsBeyond(0);

/**
 * Mean of `contactShare` over a piece of loom along which the clearance runs straight from one figure to
 * another: exact, by the integral of the normal tail. `openMm` is the doubt of a clearance with motion and
 * `tauMm` without, which counts where the loom lies against the surface.
 * @example
 * meanContact(6, 6, Math.hypot(1.343, 4), 4) // => 0.0775145
 */
export function meanContact(fromMm: number, toMm: number, openMm: number, tauMm: number): number {
  const wayMm = toMm - fromMm;
  if (wayMm < alike * tauMm && wayMm > -alike * tauMm) {
    const middleMm = (fromMm + toMm) / 2;
    return quickTail(middleMm / (middleMm > 0 ? openMm : tauMm));
  }
  if (fromMm > 0 && toMm > 0) {
    return meanTail(fromMm / openMm, toMm / openMm);
  }
  return (untilZero(fromMm, openMm, tauMm) - untilZero(toMm, openMm, tauMm)) / wayMm;
}

/**
 * Mean of the normal tail between two places, in sigmas, that are not alike.
 * @example
 * meanTail(1, 2) // => 0.0748248
 */
export function meanTail(from: number, to: number): number {
  return (tailsBeyond(from) - tailsBeyond(to)) / (to - from);
}

/** The integral of the contact from a clearance to zero. */
function untilZero(clearanceMm: number, openMm: number, tauMm: number): number {
  const doubtMm = clearanceMm > 0 ? openMm : tauMm;
  return doubtMm * (tailsBeyond(clearanceMm / doubtMm) - halfBell);
}
