import { normalTail } from '../quantity/normal-tail.ts';

/**
 * Rice's rate of touching a surface at clearance c: f exp(-c^2 / 2 sigma^2) a second, narrow-band
 * Gaussian motion.
 * @example
 * touchesPerSecond(14.214, 3, 1) // => 0.157903
 */
export function touchesPerSecond(hz: number, clearance: number, sigma: number): number {
  return hz * Math.exp(-((clearance / sigma) ** 2) / 2);
}

/**
 * Mean overshoot per cycle beyond a clearance: sigma sqrt(2 pi) Q(c / sigma), the peaks of narrow-band
 * motion being Rayleigh (exact).
 * @example
 * overshootPerCycle(2, 1.343) // => 0.229646
 */
export function overshootPerCycle(clearance: number, sigma: number): number {
  return sigma * Math.sqrt(2 * Math.PI) * normalTail(clearance / sigma);
}

/**
 * Chance measure of contact when the clearance itself is in doubt by tau: Q(c / sqrt(sigma^2 + tau^2)) for a
 * gap, and Q(c / tau) where the drawing says the loom already lies against it.
 * @example
 * contactShare(6, 1.343, 4) // => 0.0775145
 */
export function contactShare(clearanceMm: number, sigmaMm: number, tauMm: number): number {
  return clearanceMm > 0
    ? normalTail(clearanceMm / Math.sqrt(sigmaMm * sigmaMm + tauMm * tauMm))
    : normalTail(clearanceMm / tauMm);
}
