import type { MechanismHazard } from './mechanism-hazard.ts';
import { causeFactor, type RunContext, spanFigures } from './run-context.ts';

/**
 * Water standing in a wet run corrodes what any nick lets it reach, all along.
 * @example
 * wetHazards(runContext({ ...sample.middle, traits: ['wet'] }, runSurroundings(sample.map, { ...sample.middle, traits: ['wet'] }, defaultAssumptions), defaultAssumptions))[0].perMm[0] // => 2e-6
 */
export function wetHazards(run: RunContext): readonly MechanismHazard[] {
  if (!run.segment.traits.includes('wet')) return [];
  return [
    {
      cause: 'wet',
      mechanism: 'wet',
      thing: run.segment.id,
      figures: spanFigures(run, run.lengthMm / 2),
      firstCell: 0,
      placed: false,
      perMm: new Array<number>(run.cellCount).fill(
        run.assumptions.baseRates.wetPerMm * causeFactor(run, 'wet'),
      ),
    },
  ];
}
