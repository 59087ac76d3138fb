import { normalTail } from '../quantity/normal-tail.ts';
import type { HazardSums } from './hazard-sums.ts';
import { addInMiddles } from './mass-at.ts';
import { causeFactor, type RunContext, spanFigures } from './run-context.ts';

/**
 * A run that moves with a seat slides along runners and springs nobody mapped.
 * @example
 * listedCauses(runContext({ ...sample.middle, traits: ['slides-with-seat'] }, runSurroundings(sample.map, { ...sample.middle, traits: ['slides-with-seat'] }, defaultAssumptions), defaultAssumptions), [seatSlide]).length // => 1
 */
export function seatSlide(run: RunContext, sums: HazardSums): void {
  if (!run.segment.traits.includes('slides-with-seat')) return;
  const { seat, baseRates, surfaceSeverity, clearanceSigmaMm } = run.assumptions;
  const work =
    baseRates.slide *
    seat.cyclesPerHour *
    2 *
    seat.travelMm *
    seat.forceN *
    normalTail(seat.gapMm / clearanceSigmaMm);
  const factor = work * surfaceSeverity.seatFrame * causeFactor(run, 'seat-slide');
  const cells = sums.cellsOf({
    cause: 'seat-slide',
    mechanism: 'seat-slide',
    thing: run.segment.id,
    placed: false,
    figures: () => spanFigures(run, run.lengthMm / 2),
  });
  addInMiddles(cells, run.wear, factor);
}
