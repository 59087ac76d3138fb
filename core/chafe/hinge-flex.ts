import { wireShape } from '../wire/wire-shape.ts';
import { bendingStrain, bendsToBreak } from './fatigue.ts';
import type { MechanismHazard } from './mechanism-hazard.ts';
import { causeFactor, type RunContext, spanFigures } from './run-context.ts';

/**
 * A run that crosses a hinge bends each time a door or tailgate moves; strands break by Manson's universal
 * slopes at strain d / 2R. Spread over the run; the tightest drawn bend counts when it beats the usual one.
 * @example
 * hingeFlexHazards(runContext({ ...sample.middle, traits: ['crosses-hinge'] }, runSurroundings(sample.map, { ...sample.middle, traits: ['crosses-hinge'] }, defaultAssumptions), defaultAssumptions))[0].figures.bendRadiusMm // => 25
 */
export function hingeFlexHazards(run: RunContext): readonly MechanismHazard[] {
  if (!run.segment.traits.includes('crosses-hinge')) return [];
  const { flex, baseRates } = run.assumptions;
  let radiusMm = flex.radiusMm;
  for (const bend of run.tightBends) radiusMm = Math.min(radiusMm, bend.radiusMm);
  const bends = bendsToBreak(bendingStrain(wireShape(run.wire).strandMm, radiusMm));
  const mass = (baseRates.flex * flex.cyclesPerHour * causeFactor(run, 'hinge-flex')) / bends;
  return [
    {
      cause: 'hinge-flex',
      mechanism: 'hinge-flex',
      thing: run.segment.id,
      figures: {
        ...spanFigures(run, run.lengthMm / 2),
        bendRadiusMm: radiusMm,
        bundleDiameterMm: run.through.bundle.diameterMm,
      },
      firstCell: 0,
      placed: false,
      perMm: new Array<number>(run.cellCount).fill(mass / run.lengthMm),
    },
  ];
}
