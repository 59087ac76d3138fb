import { normalTail } from '../quantity/normal-tail.ts';
import type { ChafeAssumptions } from './chafe-assumptions.ts';
import type { HazardSums } from './hazard-sums.ts';
import { addInMiddles } from './mass-at.ts';
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
 * listedCauses(runContext({ ...sample.middle, traits: ['under-feet'] }, runSurroundings(sample.map, { ...sample.middle, traits: ['under-feet'] }, defaultAssumptions), defaultAssumptions), [footLoad]).length // => 1
 */
export function footLoad(run: RunContext, sums: HazardSums): void {
  if (!run.segment.traits.includes('under-feet')) return;
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
  const cells = sums.cellsOf({
    cause: 'foot-load',
    mechanism: 'foot-load',
    thing: run.segment.id,
    placed: false,
    figures: () => spanFigures(run, run.lengthMm / 2),
  });
  addInMiddles(cells, run.wear, factor);
}
