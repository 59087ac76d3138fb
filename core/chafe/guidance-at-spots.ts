import { aircraftGuidance, type GuidanceCode, type GuidanceFlag } from './aircraft-guidance.ts';
import type { NearSpot } from './near-spots.ts';
import type { RunContext } from './run-context.ts';

/** A gap this small is none: the loom lies on it. */
const touchingMm = 0.5;

/**
 * Where a run lies nearer to mapped spots than published aircraft guidance advises.
 * @example
 * spotFlags(runContext(sample.middle, runSurroundings(sample.map, sample.middle, defaultAssumptions), defaultAssumptions))[0].code // => 'narrow-hole'
 */
export function spotFlags(run: RunContext): readonly GuidanceFlag[] {
  return run.around.near.flatMap((near, i) => flagsOf(run, near, run.around.nearestMm[i] as number));
}

function flagsOf(run: RunContext, near: NearSpot, nearestMm: number): readonly GuidanceFlag[] {
  const { spot, distanceMm, inSpace } = near;
  const { holeGapMm, movingGapMm } = aircraftGuidance;
  const gapMm =
    spot.clearanceMm === null
      ? distanceMm - run.through.bundle.diameterMm / 2
      : spot.clearanceMm + distanceMm - nearestMm;
  const flags: GuidanceFlag[] = [];
  const flag = (code: GuidanceCode, advisedMm: number | null) =>
    flags.push({ code, thing: spot.id, atMm: null, mm: Math.max(0, gapMm), advisedMm });
  if (spot.kind === 'raw-edge' && gapMm < holeGapMm) flag('narrow-hole', holeGapMm);
  if ((spot.kind === 'moving-part' || spot.kind === 'hinge') && gapMm < movingGapMm) {
    flag('near-moving', movingGapMm);
  }
  // What merely crosses in plan may pass over or under: only a gap that is known counts as touching.
  const known = spot.clearanceMm !== null || inSpace;
  const covered = run.segment.covering !== 'bare' && spot.kind !== 'smooth-panel';
  if (known && covered && gapMm <= touchingMm) flag('cover-only', null);
  return flags;
}
