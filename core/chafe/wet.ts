import type { HazardSums } from './hazard-sums.ts';
import { addEvenly } from './mass-at.ts';
import { causeFactor, type RunContext, spanFigures } from './run-context.ts';

/**
 * Water standing in a wet run corrodes what any nick lets it reach, all along.
 * @example
 * listedCauses(runContext({ ...sample.middle, traits: ['wet'] }, runSurroundings(sample.map, { ...sample.middle, traits: ['wet'] }, defaultAssumptions), defaultAssumptions), [wetRun])[0].perMm[0] // => 2e-6
 */
export function wetRun(run: RunContext, sums: HazardSums): void {
  if (!run.segment.traits.includes('wet')) return;
  const cells = sums.cellsOf({
    cause: 'wet',
    mechanism: 'wet',
    thing: run.segment.id,
    placed: false,
    figures: () => spanFigures(run, run.lengthMm / 2),
  });
  addEvenly(cells, run.cellCount, run.assumptions.baseRates.wetPerMm * causeFactor(run, 'wet'));
}
