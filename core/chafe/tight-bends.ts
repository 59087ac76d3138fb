import { thinHalfStrokes } from '../wire/wall-strokes.ts';
import { type GatheredBend, gatheredBends } from './bends-of-run.ts';
import { massAt } from './mass-at.ts';
import type { MechanismHazard } from './mechanism-hazard.ts';
import { meanWearRate } from './protection.ts';
import { causeFactor, type RunContext, spanFigures } from './run-context.ts';
import { bendFactor } from './wear.ts';

/**
 * A bend tighter than ten loom diameters presses on what it goes round and works its strands, more so the
 * tighter it is and the farther it turns.
 * @example
 * tightBendHazards(runContext(sample.segment, runSurroundings(sample.map, sample.segment, defaultAssumptions), defaultAssumptions)) // => []
 */
export function tightBendHazards(run: RunContext): readonly MechanismHazard[] {
  return gatheredBends(run.tightBends).map((bend) => hazardOf(run, bend));
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
