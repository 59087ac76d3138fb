import { type FaultClass, faultClasses } from '../map/kinds.ts';
import type { NodeId } from '../quantity/id.ts';

/** A part that may itself be at fault: the plugs passed and what sits at either end. */
export interface ComponentHypothesis {
  readonly nodeId: NodeId;
  /** Where on the circuit it sits, in mm of wire. */
  readonly stationMm: number;
  /** Plugs join wire to wire; end parts are what the wire serves. */
  readonly place: 'plug' | 'first-end' | 'second-end' | 'branch-end';
}

/**
 * Everything the fault may be. Numbered in one row so that evidence is a plain list of numbers: first
 * the cells of each fault class in turn, then the components, then "none of these".
 */
export interface Hypotheses {
  /** Circuit stations of the cell borders, n + 1 of them, rising. */
  readonly cellEdgesMm: Float64Array;
  readonly cellCount: number;
  readonly classes: readonly FaultClass[];
  readonly components: readonly ComponentHypothesis[];
  readonly size: number;
}

/** Log-likelihood of one piece of evidence under every hypothesis; any constant may be added to all. */
export type Evidence = (hypotheses: Hypotheses) => Float64Array;

/**
 * Numbers the hypotheses of one circuit.
 * @example
 * layHypotheses(new Float64Array([0, 10, 20]), []).size // => 11
 */
export function layHypotheses(
  cellEdgesMm: Float64Array,
  components: readonly ComponentHypothesis[],
): Hypotheses {
  const cellCount = cellEdgesMm.length - 1;
  return {
    cellEdgesMm,
    cellCount,
    classes: faultClasses,
    components,
    size: faultClasses.length * cellCount + components.length + 1,
  };
}

/**
 * Place in the row of a component's hypothesis.
 * @example
 * componentAt(layHypotheses(new Float64Array([0, 10, 20]), []), 0) // => 10
 */
export function componentAt(hypotheses: Hypotheses, component: number): number {
  return hypotheses.classes.length * hypotheses.cellCount + component;
}

/**
 * Place in the row of "none of these".
 * @example
 * noneAt(layHypotheses(new Float64Array([0, 10, 20]), [])) // => 10
 */
export function noneAt(hypotheses: Hypotheses): number {
  return hypotheses.size - 1;
}

/**
 * Evidence that speaks about places only: the same likelihood for every fault class in a cell.
 * `perCell` gives the log-likelihood of each cell; components and "none of these" are given apart.
 * @example
 * placeEvidence(layHypotheses(new Float64Array([0, 10, 20]), []), (cell) => -cell, () => 0, -3)[10] // => -3
 */
export function placeEvidence(
  hypotheses: Hypotheses,
  perCell: (cell: number) => number,
  perComponent: (component: ComponentHypothesis) => number,
  none: number,
): Float64Array {
  const { cellCount, classes, components } = hypotheses;
  const row = new Float64Array(hypotheses.size);
  for (let cell = 0; cell < cellCount; cell++) row[cell] = perCell(cell);
  for (let k = 1; k < classes.length; k++) row.copyWithin(k * cellCount, 0, cellCount);
  components.forEach((component, i) => {
    row[componentAt(hypotheses, i)] = perComponent(component);
  });
  row[noneAt(hypotheses)] = none;
  return row;
}
