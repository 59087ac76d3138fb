import type { Segment } from '../map/records.ts';
import { type GatheredBend, gatheredBends, type TightBend } from './bends-of-run.ts';
import type { ChafeAssumptions } from './chafe-assumptions.ts';
import { type Protection, weakerCover } from './protection.ts';
import type { RunSurroundings } from './run-surroundings.ts';
import { bendFactor, inverseCapacity } from './wear.ts';

/** A covering's end and a bend's reach fade over this length, so that no border decides by itself. */
const fadeMm = 20;

/**
 * 1 / capacity of wall and cover at every border of a run's cells, first to last, 1/(N mm): large where copper shows
 * soon. Near an end the weaker of the coverings that meet there counts, and tight bends weaken the wall.
 * `strokes` is what the wall stands.
 * @example
 * wearAlong(sample.middle, runSurroundings(sample.map, sample.middle, defaultAssumptions), 150, 50, [], 5.8, defaultAssumptions)[25] * 2100 // => 0.68
 */
export function wearAlong(
  segment: Segment,
  around: RunSurroundings,
  strokes: number,
  cellCount: number,
  bends: readonly TightBend[],
  diameterMm: number,
  { protection, coverEndMm, bendLegMm }: ChafeAssumptions,
): Float64Array {
  const own = protection[segment.covering];
  const ends = [
    { cover: weakerCover(own, around.coverFrom), atMm: 0 },
    { cover: weakerCover(own, around.coverTo), atMm: around.shape.line.lengthMm },
  ];
  const cellMm = around.shape.line.lengthMm / cellCount;
  const rate = (cover: Protection, factor: number) => inverseCapacity(strokes / factor, cover);
  const wear = new Float64Array(cellCount + 1).fill(rate(own, 1));
  const tight = gatheredBends(bends);
  // Without bends only the ends differ.
  const endBorders = Math.ceil((coverEndMm + fadeMm) / cellMm);
  for (let border = 0; border <= cellCount; border++) {
    if (tight.length === 0 && border === endBorders + 1) {
      border = Math.max(border, cellCount - endBorders);
    }
    const stationMm = border * cellMm;
    const factor = bendFactorAt(tight, stationMm, diameterMm, bendLegMm / 2);
    const plain = factor === 1 ? (wear[border] as number) : rate(own, factor);
    let most = plain;
    for (const { cover, atMm } of ends) {
      const share = coverEndMm > 0 ? fading(Math.abs(stationMm - atMm), coverEndMm) : 0;
      if (share > 0 && cover !== own)
        most = Math.max(most, share * rate(cover, factor) + (1 - share) * plain);
    }
    wear[border] = most;
  }
  return wear;
}

/** 1 well inside a reach, 0 well outside, straight between. */
function fading(distanceMm: number, reachMm: number): number {
  return Math.min(1, Math.max(0, (reachMm + fadeMm / 2 - distanceMm) / fadeMm));
}

function bendFactorAt(
  bends: readonly GatheredBend[],
  stationMm: number,
  diameterMm: number,
  reachMm: number,
): number {
  let factor = 1;
  for (const { fromMm, toMm, radiusMm } of bends) {
    const share = fading(Math.max(fromMm - stationMm, stationMm - toMm, 0), reachMm);
    factor = Math.max(factor, 1 + (bendFactor(diameterMm, radiusMm) - 1) * share);
  }
  return factor;
}
