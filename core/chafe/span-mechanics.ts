/** How the ends of a span are held: free to turn, one end built in, both built in. */
export type Support = 'pinned' | 'fixed-pinned' | 'fixed';

/** Eigenvalue lambda^2 of the first mode (Blevins, Formulas for Natural Frequency and Mode Shape, from memory). */
const modeNumber: Readonly<Record<Support, number>> = {
  pinned: 9.8696,
  'fixed-pinned': 15.418,
  fixed: 22.373,
};

/** Mid-span deflection under own weight over m g L^4 / EI (Roark's Formulas for Stress and Strain, from memory). */
const sagNumber: Readonly<Record<Support, number>> = {
  pinned: 5 / 384,
  'fixed-pinned': 1 / 185,
  fixed: 1 / 384,
};

/** Standard gravity, m/s2. */
export const gravity = 9.80665;

/** A beam of loom: mass per metre and bending stiffness. */
export interface Beam {
  readonly kgPerMetre: number;
  readonly stiffnessNMm2: number;
}

/**
 * First natural frequency of a span in Hz: (lambda^2 / 2 pi) sqrt(EI / (m L^4)) (Blevins, from memory).
 * @example
 * firstModeHz({ kgPerMetre: 0.0677362, stiffnessNMm2: 44924.7 }, 300, 'pinned') // => 14.2138
 */
export function firstModeHz(beam: Beam, spanMm: number, support: Support): number {
  // N mm2 / (kg/m mm4) = 1e6 / s2.
  return (
    (modeNumber[support] / (2 * Math.PI)) *
    1000 *
    (Math.sqrt(beam.stiffnessNMm2 / beam.kgPerMetre) / (spanMm * spanMm))
  );
}

/**
 * Mid-span sag under own weight in mm, by small-deflection beam theory: good to about a twentieth of the
 * span (Roark, from memory).
 * @example
 * beamSagMm({ kgPerMetre: 0.0677362, stiffnessNMm2: 44924.7 }, 300, 'pinned') // => 1.55948
 */
export function beamSagMm(beam: Beam, spanMm: number, support: Support): number {
  const squared = spanMm * spanMm;
  return (sagNumber[support] * (beam.kgPerMetre / 1000) * gravity * squared * squared) / beam.stiffnessNMm2;
}

/** A span deeper than this share of its length is no longer a beam; sag levels off towards it. */
const deepestShare = 0.05;

/**
 * Mid-span sag in mm held to what a nearly straight loom can hang: sag / (1 + sag / (L / 20)). Common
 * practice, no source for the limit; rises with the span throughout.
 * @example
 * heldSagMm(1, 1000) // => 0.980392
 */
export function heldSagMm(beamSag: number, spanMm: number): number {
  return beamSag / (1 + beamSag / (deepestShare * spanMm));
}

/**
 * How deep a loom with spare length hangs: sqrt(3 L e / 8), a shallow parabola (plane geometry).
 * @example
 * slackBowMm(609.6, 0.7056) // => 12.7004
 */
export function slackBowMm(spanMm: number, spareMm: number): number {
  return Math.sqrt((3 * spanMm * Math.max(0, spareMm)) / 8);
}

/**
 * How far a loom with spare length reaches to either side at mid-span: (2 / pi) sqrt(L e), a half sine
 * (plane geometry).
 * @example
 * slackReachMm(300, 3) // => 19.0986
 */
export function slackReachMm(spanMm: number, spareMm: number): number {
  return (2 / Math.PI) * Math.sqrt(spanMm * Math.max(0, spareMm));
}
