import type { Covering, FaultClass, RubSpotKind } from '../map/kinds.ts';
import { baseRates, jointRate } from './base-rates.ts';
import type { CauseKind } from './cause.ts';
import { type ClassSplit, classSplit, type Mechanism } from './class-split.ts';
import { edgeSeverity, severityFactor, surfaceSeverity } from './edge-severity.ts';
import { type Protection, protectionTable } from './protection.ts';
import type { Support } from './span-mechanics.ts';

/** How a loom is driven: what the road does to the body and the body to a span. */
export interface Ride {
  readonly support: Support;
  /** Service acceleration over the ISO 16750-3 test profile. */
  readonly serviceLevel: number;
  /** Amplification at resonance. */
  readonly quality: number;
  /** Modal participation factor of a beam. */
  readonly participation: number;
}

/**
 * Every figure of judgement in the chafe model. Where no source is named it is common practice, no source.
 * Pass a changed copy to any function of this folder to draw sensitivities or to add what past jobs taught.
 */
export interface ChafeAssumptions {
  readonly ride: Ride;
  /** Share of the mid-span motion that is left at a clip. */
  readonly motionAtClip: number;
  /** Chance that a clip drawn as there has come off unseen. */
  readonly clipGoneShare: number;
  /** No span moves farther than this share of its length, one sigma. */
  readonly motionCap: number;
  /** One-sigma doubt of a clearance that was given or drawn with heights, and of one from plan alone. */
  readonly clearanceSigmaMm: number;
  readonly planClearanceSigmaMm: number;
  /** One-sigma doubt of where a drawn spot lies along the loom. */
  readonly placeSigmaMm: number;
  /** Cells are this long or shorter, mm of wire. */
  readonly longestCellMm: number;
  /** Spots farther than this from the loom's centre line are left out. */
  readonly reachMm: number;
  /** Sideways force of a loom marked as drawn tight, N. */
  readonly tightForceN: number;
  readonly edgeSeverity: Readonly<Record<RubSpotKind, number>>;
  readonly severityFactor: Readonly<Record<1 | 2 | 3, number>>;
  readonly surfaceSeverity: Readonly<Record<keyof typeof surfaceSeverity, number>>;
  readonly protection: Readonly<Record<Covering, Protection>>;
  /** A covering is not counted this near to where it stops. */
  readonly coverEndMm: number;
  readonly baseRates: Readonly<Record<keyof typeof baseRates, number>>;
  readonly jointRate: typeof jointRate;
  readonly classSplit: Readonly<Record<Mechanism, Readonly<Record<FaultClass, number>>>>;
  /** Wear factors of a hot and of a wet run. */
  readonly hotFactor: number;
  readonly wetFactor: number;
  readonly foot: {
    readonly stepsPerHour: number;
    readonly pressureMPa: number;
    readonly lengthMm: number;
    readonly slideMm: number;
  };
  readonly seat: Slide & { readonly gapMm: number };
  readonly moving: Slide;
  /** Bends of a hinge run an hour, and their radius when nothing tighter is drawn. */
  readonly flex: { readonly cyclesPerHour: number; readonly radiusMm: number };
  /** Gap round a loom in a grommeted hole, and the length of loom that can touch there. */
  readonly hole: { readonly gapMm: number; readonly lengthMm: number };
  readonly clipLengthMm: number;
  /** Where a cornered bend is rounded, no leg counts for more than this. */
  readonly bendLegMm: number;
  /** What past jobs taught, as factors on a cause, a kind of spot or one spot. Absent means 1. */
  readonly causeFactor: Readonly<Partial<Record<CauseKind, number>>>;
  readonly rubSpotKindFactor: Readonly<Partial<Record<RubSpotKind, number>>>;
  readonly rubSpotFactor: ReadonlyMap<string, number>;
  /** Finds at a spot that past jobs tell of, to be said with it. */
  readonly rubSpotFinds: ReadonlyMap<string, number>;
}

/** Sliding contact: cycles an hour, travel one way, and the force that presses. */
export interface Slide {
  readonly cyclesPerHour: number;
  readonly travelMm: number;
  readonly forceN: number;
}

export const defaultAssumptions: ChafeAssumptions = {
  ride: {
    support: 'fixed-pinned', // a plastic clip: common practice, no source
    serviceLevel: 0.2, // common practice, no source; 8 h of test for 5,000 h of driving at exponent 4
    quality: 5, // common practice, no source; a taped loom, range 3 to 12
    participation: 1.32, // beam handbooks, from memory
  },
  motionAtClip: 0.3, // common practice, no source: a plastic clip is not rigid
  clipGoneShare: 0.03, // common practice, no source
  motionCap: 0.05, // beam theory holds to about a twentieth of the span (Roark, from memory)
  clearanceSigmaMm: 4, // common practice, no source: map, build and clip
  planClearanceSigmaMm: 6, // common practice, no source: as above, heights unknown
  placeSigmaMm: 25, // common practice, no source
  longestCellMm: 10, // half the doubt of a place; finer cells change the whole by under 1 percent
  reachMm: 200, // no span moves farther in use; a search limit
  tightForceN: 2, // common practice, no source
  edgeSeverity,
  severityFactor,
  surfaceSeverity,
  protection: protectionTable,
  coverEndMm: 30, // common practice, no source
  baseRates,
  jointRate,
  classSplit: classSplit satisfies Readonly<Record<Mechanism, ClassSplit>>,
  hotFactor: 1.5, // common practice, no source: PVC at 85 C against 23 C
  wetFactor: 1.3, // common practice, no source: splashed, grit in water
  foot: { stepsPerHour: 20, pressureMPa: 0.15, lengthMm: 20, slideMm: 0.2 }, // common practice, no source
  seat: { cyclesPerHour: 0.1, travelMm: 20, forceN: 3, gapMm: 8 }, // common practice, no source
  moving: { cyclesPerHour: 5, travelMm: 10, forceN: 1 }, // common practice, no source
  flex: { cyclesPerHour: 5, radiusMm: 25 }, // common practice, no source
  hole: { gapMm: 1, lengthMm: 20 }, // common practice, no source
  clipLengthMm: 10, // common practice, no source
  bendLegMm: 60, // common practice, no source
  causeFactor: {},
  rubSpotKindFactor: {},
  rubSpotFactor: new Map(),
  rubSpotFinds: new Map(),
};
