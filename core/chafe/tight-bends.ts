import { cornersOf } from '../geometry/bend-radius.ts';
import type { StationLine } from '../geometry/station-line.ts';
import { thinHalfStrokes } from '../wire/wall-strokes.ts';
import type { ChafeAssumptions } from './chafe-assumptions.ts';
import { massAt } from './mass-at.ts';
import type { MechanismHazard } from './mechanism-hazard.ts';
import { meanWearRate } from './protection.ts';
import { causeFactor, type RunContext, spanFigures } from './run-context.ts';
import { advisedBendDiameters, bendFactor } from './wear.ts';

/** A bend tighter than ten loom diameters. */
export interface TightBend {
  readonly stationMm: number;
  readonly turnRad: number;
  readonly radiusMm: number;
}

/**
 * The bends of a drawn line that are tighter than ten loom diameters (TM 1-1500-204-23-4, item 27).
 * @example
 * tightBendsOf(stationLine([{ xMm: 0, yMm: 0, zMm: 0 }, { xMm: 200, yMm: 0, zMm: 0 }, { xMm: 200, yMm: 40, zMm: 0 }]), 5.8, defaultAssumptions)[0].radiusMm // => 20
 */
export function tightBendsOf(
  line: StationLine,
  diameterMm: number,
  { bendLegMm }: ChafeAssumptions,
): readonly TightBend[] {
  return cornersOf(line, bendLegMm).filter(({ radiusMm }) => radiusMm < advisedBendDiameters * diameterMm);
}

/** Bends nearer together than this are one bend to whoever looks, mm of loom: the chords of a round one. */
const oneBendMm = 40;

/**
 * A bend tighter than ten loom diameters presses on what it goes round and works its strands, more so the
 * tighter it is and the farther it turns.
 * @example
 * tightBendHazards(runContext(sample.segment, runSurroundings(sample.map, sample.segment, defaultAssumptions), defaultAssumptions)) // => []
 */
export function tightBendHazards(run: RunContext): readonly MechanismHazard[] {
  return gatheredBends(run.tightBends).map((bend) => hazardOf(run, bend));
}

/** One bend as a person sees it, the chords of a round one taken together. */
export interface GatheredBend {
  readonly fromMm: number;
  readonly toMm: number;
  /** The tightest radius in it. */
  readonly radiusMm: number;
  readonly parts: readonly TightBend[];
}

/**
 * Bends that lie close together, as one each.
 * @example
 * gatheredBends([{ stationMm: 10, turnRad: 1, radiusMm: 30 }, { stationMm: 20, turnRad: 1, radiusMm: 20 }])[0].radiusMm // => 20
 */
export function gatheredBends(bends: readonly TightBend[]): readonly GatheredBend[] {
  const groups: TightBend[][] = [];
  for (const bend of bends) {
    const group = groups[groups.length - 1];
    const before = group?.[group.length - 1];
    if (group && before && bend.stationMm - before.stationMm < oneBendMm) group.push(bend);
    else groups.push([bend]);
  }
  return groups.map((parts) => ({
    fromMm: (parts[0] as TightBend).stationMm,
    toMm: (parts[parts.length - 1] as TightBend).stationMm,
    radiusMm: Math.min(...parts.map(({ radiusMm }) => radiusMm)),
    parts,
  }));
}

function hazardOf(run: RunContext, { fromMm, toMm, radiusMm, parts }: GatheredBend): MechanismHazard {
  const { diameterMm } = run.through.bundle;
  const factor = run.assumptions.baseRates.tightBend * causeFactor(run, 'tight-bend');
  const cover = run.assumptions.protection[run.segment.covering];
  let mass = 0;
  for (const bend of parts) {
    const tightness = bendFactor(diameterMm, bend.radiusMm);
    // Against one bare thin wall.
    const wear = meanWearRate(run.strokes / tightness, cover) * thinHalfStrokes;
    mass += factor * (1 - 1 / tightness) * (bend.turnRad / (Math.PI / 2)) * wear;
  }
  const middleMm = (fromMm + toMm) / 2;
  return {
    cause: 'tight-bend',
    mechanism: 'tight-bend',
    thing: run.segment.id,
    figures: { ...spanFigures(run, middleMm), bendRadiusMm: radiusMm, bundleDiameterMm: diameterMm },
    ...massAt(run, middleMm, mass),
  };
}
