import type { MapDocument } from '../map/map-document.ts';
import type { Segment } from '../map/records.ts';
import { samePlaceMm } from '../quantity/tolerance.ts';
import { defaultAssumptions } from './chafe-assumptions.ts';
import { runContext } from './run-context.ts';
import { runSurroundings } from './run-surroundings.ts';

const inchMm = 25.4;

/**
 * Published aircraft guidance in mm and loom diameters. It is not a rule for cars; it is quoted as what one
 * published body of practice advises.
 */
export const aircraftGuidance = {
  /** AC 43.13-1B paragraph 11-96a: 24 in between supports. */
  spanMm: 24 * inchMm,
  /** AC 43.13-1B paragraph 11-118: 1/2 in deflection between supports. */
  bowMm: 0.5 * inchMm,
  /** AC 43.13-1B paragraph 11-115: 3/8 in at a hole. */
  holeGapMm: 0.375 * inchMm,
  /** TM 1-1500-204-23-4 item 27: 10 diameters; AS50881: 3 where supported. */
  bendDiameters: 10,
  supportedBendDiameters: 3,
} as const;

/** One figure of a run that lies outside published aircraft guidance. Stations are drawn ones. */
export type GuidanceFlag =
  | {
      readonly code: 'long-span';
      readonly fromMm: number;
      readonly toMm: number;
      readonly spanMm: number;
      readonly advisedMm: number;
    }
  | {
      readonly code: 'deep-bow';
      readonly fromMm: number;
      readonly toMm: number;
      readonly bowMm: number;
      readonly advisedMm: number;
    }
  | {
      readonly code: 'tight-bend';
      readonly stationMm: number;
      readonly radiusMm: number;
      readonly advisedMm: number;
      /** A clip lies within two loom diameters, so the tighter figure for supported looms applies. */
      readonly supported: boolean;
    }
  | {
      readonly code: 'narrow-hole';
      readonly thing: string;
      readonly gapMm: number;
      readonly advisedMm: number;
    };

/**
 * Smallest advised bend radius of a loom, mm: 10 diameters, or 3 where it is supported.
 * @example
 * advisedBendMm(5.842, false) // => 58.42
 */
export function advisedBendMm(diameterMm: number, supported: boolean): number {
  return diameterMm * (supported ? aircraftGuidance.supportedBendDiameters : aircraftGuidance.bendDiameters);
}

/**
 * Where a run lies outside published aircraft guidance (AC 43.13-1B), as facts; empty for one half drawn.
 * A raw edge stands for a hole without its grommet.
 * @example
 * guidanceFlags(sample.map, sample.middle).map((flag) => flag.code) // => ['long-span', 'deep-bow', 'narrow-hole']
 */
export function guidanceFlags(map: MapDocument, segment: Segment): readonly GuidanceFlag[] {
  const around = runSurroundings(map, segment, defaultAssumptions);
  if (!around) return [];
  const run = runContext(segment, around, defaultAssumptions);
  const { diameterMm } = run.through.bundle;
  const flags: GuidanceFlag[] = [];
  for (const { fromMm, toMm, drive } of run.spans) {
    if (drive.spanMm > aircraftGuidance.spanMm + samePlaceMm) {
      flags.push({
        code: 'long-span',
        fromMm,
        toMm,
        spanMm: drive.spanMm,
        advisedMm: aircraftGuidance.spanMm,
      });
    }
  }
  for (const { fromMm, toMm, drive } of run.spans) {
    if (drive.hangMm > aircraftGuidance.bowMm) {
      flags.push({ code: 'deep-bow', fromMm, toMm, bowMm: drive.hangMm, advisedMm: aircraftGuidance.bowMm });
    }
  }
  for (const { stationMm, radiusMm } of run.tightBends) {
    const supported = segment.clips.some(
      (clip) => !clip.missing && Math.abs(clip.stationMm - stationMm) <= 2 * diameterMm,
    );
    const advisedMm = advisedBendMm(diameterMm, supported);
    if (radiusMm < advisedMm) flags.push({ code: 'tight-bend', stationMm, radiusMm, advisedMm, supported });
  }
  around.near.forEach(({ spot, distanceMm }, i) => {
    if (spot.kind !== 'raw-edge') return;
    const nearestMm = around.nearestMm[i] as number;
    const gapMm =
      spot.clearanceMm === null ? distanceMm - diameterMm / 2 : spot.clearanceMm + distanceMm - nearestMm;
    if (gapMm < aircraftGuidance.holeGapMm) {
      flags.push({
        code: 'narrow-hole',
        thing: spot.id,
        gapMm: Math.max(0, gapMm),
        advisedMm: aircraftGuidance.holeGapMm,
      });
    }
  });
  return flags;
}
