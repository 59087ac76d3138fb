import type { FaultClass } from '../map/kinds.ts';
import type { CauseFigures, CauseKind } from './cause.ts';

/**
 * Relative hazard along one traced circuit, in cells. Only ratios mean anything: no failure time is
 * predicted. Cells are 10 mm of wire or finer and never straddle a run's end.
 */
export interface HazardField {
  /** Circuit stations of the cell borders, n + 1 of them, rising. */
  readonly cellEdgesMm: Float64Array;
  /** Hazard per mm of wire in each of the n cells, by the class of fault it leads to. */
  readonly byClass: Readonly<Record<FaultClass, Float64Array>>;
  /** The same hazard, all classes together, split by what causes it. */
  readonly causes: readonly HazardCause[];
}

/**
 * One cause's part of the hazard: density per mm of wire in the cells it reaches. `perMm[i]` belongs to
 * cell `firstCell + i`; everywhere else the cause adds nothing.
 */
export interface HazardCause {
  readonly cause: CauseKind;
  readonly thing: string | null;
  readonly figures: CauseFigures;
  readonly firstCell: number;
  readonly perMm: Float64Array;
}
