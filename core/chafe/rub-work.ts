import { normalTail } from '../quantity/normal-tail.ts';
import { contactShare } from './contact.ts';
import type { SpanDrive } from './span-drive.ts';

/** How a loom meets a surface at one place. */
export interface Meeting {
  /** Free gap after sag and slack; negative where it already presses. */
  readonly clearanceMm: number;
  /** Share of the mid-span motion at this place. */
  readonly shape: number;
  readonly tauMm: number;
  /** Steady side force, N. */
  readonly forceN: number;
}

/**
 * Force times slip per second and mm of loom, N mm/s: the span's drive times shape squared times the share
 * of contact, and the steady force times four amplitudes a cycle. The held motion
 * serves the contact only: a cap on the slip would make long spans rub less.
 * @example
 * rubWork(spanDrive({ kgPerMetre: 0.0677362, stiffnessNMm2: 44924.7 }, 300, 0, defaultAssumptions.ride, 0.05), { clearanceMm: 6, shape: 1, tauMm: 4, forceN: 0 }) // => 1.15371
 */
export function rubWork(drive: SpanDrive, { clearanceMm, shape, tauMm, forceN }: Meeting): number {
  const sigma = drive.sigmaMm * shape;
  const contact = clearanceMm === 0 ? 0.5 : contactShare(clearanceMm, sigma, tauMm);
  const shaken = drive.work * shape * shape * contact;
  if (forceN === 0) return shaken;
  return shaken + forceN * normalTail(clearanceMm / tauMm) * 4 * drive.hz * drive.motionMm * shape;
}
