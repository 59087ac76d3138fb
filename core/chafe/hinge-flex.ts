import { wireShape } from '../wire/wire-shape.ts';
import { bendingStrain, bendsToBreak } from './fatigue.ts';
import type { HazardSums } from './hazard-sums.ts';
import { addEvenly } from './mass-at.ts';
import { causeFactor, type RunContext, spanFigures } from './run-context.ts';

/**
 * A run that crosses a hinge bends each time a door or tailgate moves; strands break by Manson's universal
 * slopes at strain d / 2R. Spread over the run; the tightest drawn bend counts when it beats the usual one.
 * @example
 * listedCauses(runContext({ ...sample.middle, traits: ['crosses-hinge'] }, runSurroundings(sample.map, { ...sample.middle, traits: ['crosses-hinge'] }, defaultAssumptions), defaultAssumptions), [hingeFlex])[0].figures.bendRadiusMm // => 25
 */
export function hingeFlex(run: RunContext, sums: HazardSums): void {
  if (!run.segment.traits.includes('crosses-hinge')) return;
  const { flex, baseRates } = run.assumptions;
  let radiusMm = flex.radiusMm;
  for (const bend of run.tightBends) radiusMm = Math.min(radiusMm, bend.radiusMm);
  const bends = bendsToBreak(bendingStrain(wireShape(run.wire).strandMm, radiusMm));
  const mass = (baseRates.flex * flex.cyclesPerHour * causeFactor(run, 'hinge-flex')) / bends;
  const cells = sums.cellsOf({
    cause: 'hinge-flex',
    mechanism: 'hinge-flex',
    thing: run.segment.id,
    placed: false,
    figures: () => ({
      ...spanFigures(run, run.lengthMm / 2),
      bendRadiusMm: radiusMm,
      bundleDiameterMm: run.through.bundle.diameterMm,
    }),
  });
  addEvenly(cells, run.cellCount, mass / run.lengthMm);
}
