import type { RubSpot } from '../map/records.ts';
import { normalTail } from '../quantity/normal-tail.ts';
import type { ChafeAssumptions } from './chafe-assumptions.ts';
import { contactShare } from './contact.ts';
import type { Span, Swing } from './span.ts';
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

/** A surface beside a loom at one place: the gap as drawn, before the loom sags. */
export interface Surface {
  readonly gapMm: number;
  readonly side: RubSpot['side'];
  readonly tauMm: number;
  readonly forceN: number;
}

/**
 * Height of a swing's half-sine at a station, 0 at its holds and 1 in the middle.
 * @example
 * swingSine({ fromMm: 0, drive: { spanMm: 300 } }, 150) // => 1
 */
export function swingSine(
  swing: { readonly fromMm: number; readonly drive: Pick<SpanDrive, 'spanMm'> },
  stationMm: number,
): number {
  return Math.max(0, Math.sin((Math.PI * (stationMm - swing.fromMm)) / swing.drive.spanMm));
}

/**
 * Free gap at a station once the loom has come as near as sag (to what lies below) and spare length (to
 * anything but what lies above) let it, mm.
 * @example
 * gapAfterSag({ fromMm: 0, drive: { spanMm: 300, sagMm: 2, slackReachMm: 3 } }, 150, { gapMm: 9, side: 'below' }) // => 4
 */
export function gapAfterSag(
  swing: {
    readonly fromMm: number;
    readonly drive: Pick<SpanDrive, 'spanMm' | 'sagMm' | 'slackReachMm'>;
  },
  stationMm: number,
  { gapMm, side }: Pick<Surface, 'gapMm' | 'side'>,
): number {
  const { sagMm, slackReachMm } = swing.drive;
  const droopMm = side === 'above' ? 0 : side === 'below' ? slackReachMm + sagMm : slackReachMm;
  return droopMm === 0 ? gapMm : gapMm - droopMm * swingSine(swing, stationMm);
}

/**
 * Rubbing work at a station of a span, N mm/s per mm, with the small chance that a clip at either end has
 * come off unseen.
 * @example
 * rubWorkAt({ fromMm: 0, toMm: 300, drive: spanDrive({ kgPerMetre: 0.0677362, stiffnessNMm2: 44924.7 }, 300, 0, defaultAssumptions.ride, 0.05), missingClips: 0, ifFromGone: null, ifToGone: null }, 150, { gapMm: 0, side: 'level', tauMm: 4, forceN: 0 }, defaultAssumptions) // => 8.34825
 */
export function rubWorkAt(
  span: Span,
  stationMm: number,
  surface: Surface,
  assumptions: ChafeAssumptions,
): number {
  return rubWorkAcross(span, stationMm, surface.gapMm, surface, assumptions);
}

/**
 * As `rubWorkAt`, for a gap other than the surface's own: one surface serves a whole run.
 * @example
 * rubWorkAcross({ fromMm: 0, toMm: 300, drive: spanDrive({ kgPerMetre: 0.0677362, stiffnessNMm2: 44924.7 }, 300, 0, defaultAssumptions.ride, 0.05), missingClips: 0, ifFromGone: null, ifToGone: null }, 150, 6, { gapMm: 0, side: 'level', tauMm: 4, forceN: 0 }, defaultAssumptions) // => 1.15371
 */
export function rubWorkAcross(
  span: Span,
  stationMm: number,
  gapMm: number,
  surface: Surface,
  assumptions: ChafeAssumptions,
): number {
  return (
    heldWork(span, stationMm, gapMm, surface, assumptions) +
    goneWork(span, stationMm, gapMm, surface, assumptions)
  );
}

/**
 * The part of `rubWorkAcross` with every clip in place.
 * @example
 * heldWork({ fromMm: 0, toMm: 300, drive: spanDrive({ kgPerMetre: 0.0677362, stiffnessNMm2: 44924.7 }, 300, 0, defaultAssumptions.ride, 0.05), missingClips: 0, ifFromGone: null, ifToGone: null }, 150, 6, { gapMm: 0, side: 'level', tauMm: 4, forceN: 0 }, defaultAssumptions) // => 1.15371
 */
export function heldWork(
  span: Span,
  stationMm: number,
  gapMm: number,
  surface: Surface,
  { clipGoneShare, motionAtClip }: ChafeAssumptions,
): number {
  const solidEnds = (span.ifFromGone ? 0 : 0.5) + (span.ifToGone ? 0 : 0.5);
  const share = 1 - clipGoneShare * (1 - solidEnds);
  return share * swungWork(span, stationMm, gapMm, surface, motionAtClip);
}

/**
 * The part of `rubWorkAcross` with the clip at one end or the other gone.
 * @example
 * goneWork({ fromMm: 0, toMm: 300, drive: spanDrive({ kgPerMetre: 0.0677362, stiffnessNMm2: 44924.7 }, 300, 0, defaultAssumptions.ride, 0.05), missingClips: 0, ifFromGone: null, ifToGone: null }, 150, 6, { gapMm: 0, side: 'level', tauMm: 4, forceN: 0 }, defaultAssumptions) // => 0
 */
export function goneWork(
  { ifFromGone, ifToGone }: Span,
  stationMm: number,
  gapMm: number,
  surface: Surface,
  { clipGoneShare, motionAtClip }: ChafeAssumptions,
): number {
  const fromGone = ifFromGone ? swungWork(ifFromGone, stationMm, gapMm, surface, motionAtClip) : 0;
  const toGone = ifToGone ? swungWork(ifToGone, stationMm, gapMm, surface, motionAtClip) : 0;
  return (clipGoneShare * (fromGone + toGone)) / 2;
}

/** `rubWork` of one swing. Written out in plain numbers: it runs for every place of every run. */
function swungWork(
  { fromMm, drive }: Swing,
  stationMm: number,
  gapMm: number,
  { side, tauMm, forceN }: Surface,
  motionAtClip: number,
): number {
  const sine = Math.max(0, Math.sin((Math.PI * (stationMm - fromMm)) / drive.spanMm));
  const shape = motionAtClip + (1 - motionAtClip) * sine;
  let clearanceMm = gapMm;
  if (side !== 'above') clearanceMm -= drive.slackReachMm * sine;
  if (side === 'below') clearanceMm -= drive.sagMm * sine;
  const contact = clearanceMm === 0 ? 0.5 : contactShare(clearanceMm, drive.sigmaMm * shape, tauMm);
  const shaken = drive.work * shape * shape * contact;
  if (forceN === 0) return shaken;
  return shaken + forceN * normalTail(clearanceMm / tauMm) * 4 * drive.hz * drive.motionMm * shape;
}
