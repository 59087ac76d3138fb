import { thinHalfStrokes } from '../wire/wall-strokes.ts';
import { type GatheredBend, gatheredBends } from './bends-of-run.ts';
import type { HazardSums } from './hazard-sums.ts';
import { addMass } from './mass-at.ts';
import { meanWearRate } from './protection.ts';
import { causeFactor, type RunContext, spanFigures } from './run-context.ts';
import { bendFactor } from './wear.ts';

/**
 * A bend tighter than ten loom diameters presses on what it goes round and works its strands, more so the
 * tighter it is and the farther it turns.
 * @example
 * listedCauses(runContext(sample.segment, runSurroundings(sample.map, sample.segment, defaultAssumptions), defaultAssumptions), [tightBends]) // => []
 */
export function tightBends(run: RunContext, sums: HazardSums): void {
  if (run.tightBends.length === 0) return;
  for (const bend of gatheredBends(run.tightBends)) addBend(run, sums, bend);
}

function addBend(run: RunContext, sums: HazardSums, { fromMm, toMm, radiusMm, parts }: GatheredBend): void {
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
  const cells = sums.cellsOf({
    cause: 'tight-bend',
    mechanism: 'tight-bend',
    thing: run.segment.id,
    placed: true,
    figures: () => ({
      ...spanFigures(run, middleMm),
      bendRadiusMm: radiusMm,
      bundleDiameterMm: diameterMm,
    }),
  });
  addMass(cells, run, middleMm, mass);
}
