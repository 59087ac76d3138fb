import type { Segment } from '../map/records.ts';
import { wallStrokes } from '../wire/wall-strokes.ts';
import type { Wire } from '../wire/wire-shape.ts';
import type { ChafeAssumptions } from './chafe-assumptions.ts';
import { type Protection, weakerCover } from './protection.ts';
import type { RunSurroundings } from './run-surroundings.ts';
import type { TightBend } from './tight-bends.ts';
import { bendFactor, inverseCapacity } from './wear.ts';

/**
 * 1 / capacity of wall and cover in every cell of a run, 1/(N mm): large where copper shows soon. Near an
 * end the weaker of the coverings that meet there counts; heat, water and tight bends weaken the wall.
 * @example
 * wearAlong(sample.middle, runSurroundings(sample.map, sample.middle, defaultAssumptions), usualBundle.wire, 5, [], 5.8, { ...defaultAssumptions, coverEndMm: 0 })[2] * 2100 // => 0.680003
 */
export function wearAlong(
  segment: Segment,
  around: RunSurroundings,
  wire: Wire,
  cellCount: number,
  bends: readonly TightBend[],
  diameterMm: number,
  assumptions: ChafeAssumptions,
): readonly number[] {
  const { protection, coverEndMm, bendLegMm, hotFactor, wetFactor } = assumptions;
  const hot = segment.traits.includes('hot') ? hotFactor : 1;
  const wet = segment.traits.includes('wet') ? wetFactor : 1;
  const strokes = wallStrokes(wire) / (hot * wet);
  const own = protection[segment.covering];
  const fromCover = weakerCover(own, around.coverFrom);
  const toCover = weakerCover(own, around.coverTo);
  const { lengthMm } = around.shape.line;
  const cellMm = lengthMm / cellCount;
  const endMm = Math.min(coverEndMm, lengthMm / 2);
  const inCell = (cell: number, factor: number): number => {
    const rate = (cover: Protection) => inverseCapacity(strokes / factor, cover);
    const atFrom = shareWithin(endMm - cell * cellMm, cellMm);
    const atTo = shareWithin(endMm - (lengthMm - (cell + 1) * cellMm), cellMm);
    const inside = Math.max(0, 1 - atFrom - atTo);
    return atFrom * rate(fromCover) + atTo * rate(toCover) + inside * rate(own);
  };
  const wear = new Array<number>(cellCount).fill(inverseCapacity(strokes, own));
  const endCells = Math.min(cellCount, Math.ceil(endMm / cellMm));
  for (let cell = 0; cell < endCells; cell++) {
    wear[cell] = inCell(cell, 1);
    wear[cellCount - 1 - cell] = inCell(cellCount - 1 - cell, 1);
  }
  for (const { stationMm, radiusMm } of bends) {
    const factor = bendFactor(diameterMm, radiusMm);
    const first = Math.max(0, Math.floor((stationMm - bendLegMm / 2) / cellMm));
    const last = Math.min(cellCount - 1, Math.floor((stationMm + bendLegMm / 2) / cellMm));
    for (let cell = first; cell <= last; cell++) {
      wear[cell] = Math.max(wear[cell] as number, inCell(cell, factor));
    }
  }
  return wear;
}

const shareWithin = (overMm: number, cellMm: number) => Math.min(1, Math.max(0, overMm / cellMm));
