import { type FaultClass, faultClasses } from '../map/kinds.ts';
import type { HazardField } from './hazard-field.ts';

/**
 * The hazard when lives scatter less than by pure chance: with Weibull lives of one shape everywhere, a place
 * of rate r fails first with chance r^shape / sum r^shape (order statistics, exact). Shape 1 changes nothing;
 * 2 suits an old car. Classes and causes of a cell keep their proportions and the whole its sum.
 * @example
 * agedField(hazardAlong(sample.map, sample.line), 1).cellEdgesMm.length // => 151
 */
export function agedField(field: HazardField, shape: number): HazardField {
  const cellCount = field.cellEdgesMm.length - 1;
  const scale = new Float64Array(cellCount);
  let mass = 0;
  let agedMass = 0;
  for (let cell = 0; cell < cellCount; cell++) {
    const density = faultClasses.reduce((sum, kind) => sum + (field.byClass[kind][cell] as number), 0);
    const widthMm = (field.cellEdgesMm[cell + 1] as number) - (field.cellEdgesMm[cell] as number);
    scale[cell] = density > 0 ? density ** (shape - 1) : 0;
    mass += density * widthMm;
    agedMass += density * (scale[cell] as number) * widthMm;
  }
  const level = agedMass > 0 ? mass / agedMass : 0;
  const aged = (perMm: Float64Array, firstCell: number) =>
    perMm.map((density, i) => density * (scale[firstCell + i] as number) * level);
  const byClass = Object.fromEntries(faultClasses.map((kind) => [kind, aged(field.byClass[kind], 0)]));
  return {
    cellEdgesMm: field.cellEdgesMm,
    byClass: byClass as Record<FaultClass, Float64Array>,
    causes: field.causes.map((cause) => ({ ...cause, perMm: aged(cause.perMm, cause.firstCell) })),
  };
}
