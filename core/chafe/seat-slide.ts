import { normalTail } from '../quantity/normal-tail.ts';
import { inMiddles } from './mass-at.ts';
import type { MechanismHazard } from './mechanism-hazard.ts';
import { causeFactor, type RunContext, spanFigures } from './run-context.ts';

/**
 * A run that moves with a seat slides along runners and springs nobody mapped.
 * @example
 * seatSlideHazards(runContext({ ...sample.middle, traits: ['slides-with-seat'] }, runSurroundings(sample.map, { ...sample.middle, traits: ['slides-with-seat'] }, defaultAssumptions), defaultAssumptions)).length // => 1
 */
export function seatSlideHazards(run: RunContext): readonly MechanismHazard[] {
  if (!run.segment.traits.includes('slides-with-seat')) return [];
  const { seat, baseRates, surfaceSeverity, clearanceSigmaMm } = run.assumptions;
  const work =
    baseRates.slide *
    seat.cyclesPerHour *
    2 *
    seat.travelMm *
    seat.forceN *
    normalTail(seat.gapMm / clearanceSigmaMm);
  const factor = work * surfaceSeverity.seatFrame * causeFactor(run, 'seat-slide');
  return [
    {
      cause: 'seat-slide',
      mechanism: 'seat-slide',
      thing: run.segment.id,
      figures: spanFigures(run, run.lengthMm / 2),
      firstCell: 0,
      placed: false,
      perMm: inMiddles(run.wear, factor),
    },
  ];
}
