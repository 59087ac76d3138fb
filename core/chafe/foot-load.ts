import { normalTail } from '../quantity/normal-tail.ts';
import type { ChafeAssumptions } from './chafe-assumptions.ts';
import { inMiddles } from './mass-at.ts';
import type { MechanismHazard } from './mechanism-hazard.ts';
import { causeFactor, type RunContext, spanFigures } from './run-context.ts';

/**
 * Force of a foot on a loom under a mat, N: heel pressure over loom diameter times the length it covers.
 * Common practice, no source.
 * @example
 * footForceN(defaultAssumptions.foot, 5.842) // => 17.526
 */
export function footForceN(foot: ChafeAssumptions['foot'], diameterMm: number): number {
  return foot.pressureMPa * diameterMm * foot.lengthMm;
}

/**
 * A run that feet reach is trodden on to what lies under it, all along.
 * @example
 * footLoadHazards(runContext({ ...sample.middle, traits: ['under-feet'] }, runSurroundings(sample.map, { ...sample.middle, traits: ['under-feet'] }, defaultAssumptions), defaultAssumptions)).length // => 1
 */
export function footLoadHazards(run: RunContext): readonly MechanismHazard[] {
  if (!run.segment.traits.includes('under-feet')) return [];
  const { assumptions } = run;
  const { foot, baseRates, surfaceSeverity } = assumptions;
  const resting = normalTail(0);
  const work =
    baseRates.foot *
    foot.stepsPerHour *
    footForceN(foot, run.through.bundle.diameterMm) *
    foot.slideMm *
    resting;
  const factor = work * surfaceSeverity.underfoot * causeFactor(run, 'foot-load');
  return [
    {
      cause: 'foot-load',
      mechanism: 'foot-load',
      thing: run.segment.id,
      figures: spanFigures(run, run.lengthMm / 2),
      firstCell: 0,
      placed: false,
      perMm: inMiddles(run.wear, factor),
    },
  ];
}
