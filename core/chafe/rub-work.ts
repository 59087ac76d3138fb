import { normalTail } from '../quantity/normal-tail.ts';
import { contactShare } from './contact.ts';
import type { Span } from './span.ts';
import type { SpanDrive } from './span-drive.ts';

/**
 * Height of a span's half-sine at a station, 0 at its holds and 1 in the middle.
 * @example
 * spanSine({ fromMm: 0, drive: { spanMm: 300 } }, 150) // => 1
 */
export function spanSine(
  span: { readonly fromMm: number; readonly drive: Pick<Span['drive'], 'spanMm'> },
  stationMm: number,
): number {
  return Math.max(0, Math.sin((Math.PI * (stationMm - span.fromMm)) / span.drive.spanMm));
}

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
 * of contact, and the steady force times four amplitudes a cycle.
 * @example
 * rubWork(spanDrive({ kgPerMetre: 0.0677362, stiffnessNMm2: 44924.7 }, 300, 0, defaultAssumptions.ride, 0.05), { clearanceMm: 6, shape: 1, tauMm: 4, forceN: 0 }) // => 1.15371
 */
export function rubWork(drive: SpanDrive, meeting: Meeting): number {
  const { clearanceMm, shape, tauMm, forceN } = meeting;
  const sigma = drive.sigmaMm * shape;
  const shaken = drive.work * shape * shape * contactShare(clearanceMm, sigma, tauMm);
  if (forceN === 0) return shaken;
  return shaken + forceN * normalTail(clearanceMm / tauMm) * 4 * drive.hz * sigma;
}
