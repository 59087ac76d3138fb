import type { Ride } from './chafe-assumptions.ts';
import { type Beam, beamSagMm, firstModeHz, heldSagMm, slackBowMm, slackReachMm } from './span-mechanics.ts';
import { bodyDensity, milesDisplacement } from './vibration.ts';

/** What one span of loom does when the body shakes. */
export interface SpanDrive {
  readonly spanMm: number;
  readonly hz: number;
  /** Force times slip at mid-span, N mm/s per mm of loom, before contact and shape. */
  readonly work: number;
  /** One-sigma motion at mid-span by Miles, and held to what the span's length allows. */
  readonly motionMm: number;
  readonly sigmaMm: number;
  /** Sag under own weight at mid-span; how far spare length lets it reach; and both, as one sees it hang. */
  readonly sagMm: number;
  readonly slackReachMm: number;
  readonly hangMm: number;
}

/**
 * Motion and rubbing drive of a span. Work is (sqrt(2 pi) / 4 pi) G^2 m L Q W(f) s^2, which is the mean
 * overshoot of narrow-band motion times its generalised stiffness (Miles, Rice); motion is Miles' held to a
 * share of the span.
 * @example
 * spanDrive({ kgPerMetre: 0.0677362, stiffnessNMm2: 44924.7 }, 300, 0, defaultAssumptions.ride, 0.05).work // => 16.6965
 */
export function spanDrive(
  beam: Beam,
  spanMm: number,
  spareMm: number,
  ride: Ride,
  motionCap: number,
): SpanDrive {
  const hz = firstModeHz(beam, spanMm, ride.support);
  const density = bodyDensity(hz) * ride.serviceLevel ** 2;
  // kg/m x m x (m/s2)2/Hz is W per m: 1000 N mm/s per mm of loom.
  const work =
    (Math.sqrt(2 * Math.PI) / (4 * Math.PI)) *
    ride.participation ** 2 *
    beam.kgPerMetre *
    (spanMm / 1000) *
    ride.quality *
    density *
    1000;
  const motionMm = ride.participation * milesDisplacement(hz, ride.quality, density) * 1000;
  const sagMm = heldSagMm(beamSagMm(beam, spanMm, ride.support), spanMm);
  return {
    spanMm,
    hz,
    work,
    motionMm,
    sigmaMm: Math.min(motionMm, motionCap * spanMm),
    sagMm,
    slackReachMm: slackReachMm(spanMm, spareMm),
    hangMm: sagMm + slackBowMm(spanMm, spareMm),
  };
}
