import { cornersOf } from '../geometry/bend-radius.ts';
import type { StationLine } from '../geometry/station-line.ts';
import type { ChafeAssumptions } from './chafe-assumptions.ts';
import { cellAt, massAt } from './mass-at.ts';
import type { MechanismHazard } from './mechanism-hazard.ts';
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
  return gathered(run.tightBends).map((bend) => hazardOf(run, bend));
}

function gathered(bends: readonly TightBend[]): readonly (readonly TightBend[])[] {
  const groups: TightBend[][] = [];
  for (const bend of bends) {
    const group = groups[groups.length - 1];
    const before = group?.[group.length - 1];
    if (group && before && bend.stationMm - before.stationMm < oneBendMm) group.push(bend);
    else groups.push([bend]);
  }
  return groups;
}

function hazardOf(run: RunContext, bends: readonly TightBend[]): MechanismHazard {
  const { baseRates } = run.assumptions;
  const { diameterMm } = run.through.bundle;
  const factor = baseRates.tightBend * causeFactor(run, 'tight-bend');
  let mass = 0;
  let tightest = bends[0] as TightBend;
  for (const bend of bends) {
    // Judged against one bare thin wall, whose 1 / capacity is 1 / 2100 N mm; wear already holds the bend.
    const plainWear = (run.wear[cellAt(run, bend.stationMm)] as number) * 2100;
    const excess = 1 - 1 / bendFactor(diameterMm, bend.radiusMm);
    mass += factor * excess * (bend.turnRad / (Math.PI / 2)) * plainWear;
    if (bend.radiusMm < tightest.radiusMm) tightest = bend;
  }
  const middle = bends[bends.length >> 1] as TightBend;
  return {
    cause: 'tight-bend',
    mechanism: 'tight-bend',
    thing: run.segment.id,
    figures: {
      ...spanFigures(run, middle.stationMm),
      bendRadiusMm: tightest.radiusMm,
      bundleDiameterMm: diameterMm,
    },
    ...massAt(run, middle.stationMm, mass),
  };
}
