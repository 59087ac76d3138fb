import { type Corner, cornersOf } from '../geometry/bend-radius.ts';
import type { StationLine } from '../geometry/station-line.ts';
import type { ChafeAssumptions } from './chafe-assumptions.ts';
import { advisedBendDiameters } from './wear.ts';

/** A bend tighter than ten loom diameters. */
export interface TightBend {
  readonly stationMm: number;
  readonly turnRad: number;
  readonly radiusMm: number;
}

/**
 * The bends of a drawn line that are tighter than ten loom diameters (TM 1-1500-204-23-4, item 27). However a
 * line is drawn, a loom's middle bends no tighter than half its thickness.
 * @example
 * tightBendsOf(stationLine([{ xMm: 0, yMm: 0, zMm: 0 }, { xMm: 200, yMm: 0, zMm: 0 }, { xMm: 200, yMm: 40, zMm: 0 }]), 5.8, defaultAssumptions)[0].radiusMm // => 20
 */
export function tightBendsOf(
  line: StationLine,
  diameterMm: number,
  { bendLegMm }: ChafeAssumptions,
): readonly TightBend[] {
  const tight: TightBend[] = [];
  for (const { stationMm, turnRad, radiusMm } of cornersWithin(line, bendLegMm)) {
    if (radiusMm >= advisedBendDiameters * diameterMm) continue;
    tight.push({ stationMm, turnRad, radiusMm: Math.max(radiusMm, diameterMm / 2) });
  }
  return tight;
}

interface Measured {
  readonly legMm: number;
  readonly corners: readonly Corner[];
}
const known = new WeakMap<StationLine, Measured>();

function cornersWithin(line: StationLine, legMm: number): readonly Corner[] {
  const before = known.get(line);
  if (before?.legMm === legMm) return before.corners;
  const corners = cornersOf(line, legMm);
  known.set(line, { legMm, corners });
  return corners;
}

/** Bends nearer together than this are one bend to whoever looks, mm of loom: the chords of a round one. */
const oneBendMm = 40;

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
