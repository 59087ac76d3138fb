import type { HazardField } from '../chafe/hazard-field.ts';
import type { FaultClass, NodeKind } from '../map/kinds.ts';
import { compensatedSum } from '../quantity/sums.ts';
import { componentAt, type Hypotheses, noneAt } from './hypotheses.ts';

/**
 * Chance of each kind of fault before anything is known (judgement; the only support seen is an air
 * force survey that found connectors and wiring the largest contributors to electrical failures).
 */
export const classPrior: Readonly<Record<FaultClass | 'component', number>> = {
  'short-to-ground': 0.25,
  open: 0.25,
  'high-resistance': 0.25,
  component: 0.15,
  'short-to-supply': 0.05,
  'wire-to-wire': 0.05,
};

/** Chance kept aside for what is not in the list at all, so that a contradiction can show (judgement). */
export const noneOfThesePrior = 0.02;

/** How far the hazard is believed about where on the wire the fault is. */
export interface PriorShape {
  /** Exponent on the hazard: below 1 draws high and low places nearer to each other. */
  readonly hazardExponent: number;
  /** Share of each class spread evenly over the wire: faults where nothing was mapped. */
  readonly evenFloor: number;
}

/**
 * Judgement, set by simulation (`npm run sim`): of the pairs tried this one had the best log score where
 * a hazard model is wrong by a factor of about three, and its 80 percent regions held 80 percent.
 */
export const usualPriorShape: PriorShape = { hazardExponent: 0.8, evenFloor: 0.2 };

/** How likely each kind of part is to be the one at fault, against one another (judgement). */
export const componentWeight: Readonly<Record<NodeKind, number>> = {
  'inline-connector': 1,
  splice: 0.5,
  'ground-point': 1.5,
  module: 1,
  switch: 2,
  sensor: 2,
  load: 2,
  'fuse-box': 1,
  branch: 0,
  grommet: 0,
  'loose-end': 0,
};

/** Factors on the prior of each class, from the reported failure type or what past jobs taught. */
export type ClassFactors = Readonly<Record<FaultClass | 'component', number>>;

/** Nothing known that favours any class. */
export const evenFactors: ClassFactors = {
  'short-to-ground': 1,
  'short-to-supply': 1,
  'wire-to-wire': 1,
  open: 1,
  'high-resistance': 1,
  component: 1,
};

/**
 * Log prior of every hypothesis: class chance times factor, spread along the wire as the hazard says
 * with an even floor; components share theirs by `weights`. Sums to one. O(classes x cells).
 * @example
 * logPrior(layHypotheses(sample.field.cellEdgesMm, []), sample.field, [], evenFactors).length // => 751
 */
export function logPrior(
  hypotheses: Hypotheses,
  field: HazardField,
  weights: readonly number[],
  factors: ClassFactors,
  shape: PriorShape = usualPriorShape,
): Float64Array {
  const { cellCount, cellEdgesMm, classes } = hypotheses;
  const lengthMm = (cellEdgesMm[cellCount] as number) - (cellEdgesMm[0] as number);
  const weightSum = compensatedSum(weights);
  const onWire = 1 - noneOfThesePrior;
  const mass = (kind: FaultClass | 'component') => onWire * classPrior[kind] * factors[kind];
  const parts = classes.map(mass);
  const componentMass = weightSum > 0 ? mass('component') : 0;
  const total = compensatedSum([...parts, componentMass, noneOfThesePrior]);
  const row = new Float64Array(hypotheses.size);
  classes.forEach((kind, k) => {
    const density = field.byClass[kind];
    let hazardSum = 0;
    const tempered = density.map((perMm) => perMm ** shape.hazardExponent);
    for (let cell = 0; cell < cellCount; cell++) hazardSum += cellHazard(tempered, cellEdgesMm, cell);
    const floor = hazardSum > 0 ? shape.evenFloor : 1;
    for (let cell = 0; cell < cellCount; cell++) {
      const even = ((cellEdgesMm[cell + 1] as number) - (cellEdgesMm[cell] as number)) / lengthMm;
      const shaped = hazardSum > 0 ? cellHazard(tempered, cellEdgesMm, cell) / hazardSum : 0;
      const share = floor * even + (1 - floor) * shaped;
      row[k * cellCount + cell] = Math.log(((parts[k] as number) / total) * share);
    }
  });
  weights.forEach((weight, i) => {
    const share = weightSum > 0 ? weight / weightSum : 0;
    row[componentAt(hypotheses, i)] = Math.log((componentMass / total) * share);
  });
  row[noneAt(hypotheses)] = Math.log(noneOfThesePrior / total);
  return row;
}

function cellHazard(perMm: Float64Array, edgesMm: Float64Array, cell: number): number {
  return (perMm[cell] as number) * ((edgesMm[cell + 1] as number) - (edgesMm[cell] as number));
}
