import type { CauseFigures, CauseKind } from './cause.ts';
import type { Mechanism } from './class-split.ts';

/**
 * One cause's hazard on one run: density per hour and mm of drawn loom in a window of its cells, and the
 * mechanism whose class split applies.
 */
export interface MechanismHazard {
  readonly cause: CauseKind;
  readonly mechanism: Mechanism;
  readonly thing: string | null;
  readonly figures: CauseFigures;
  readonly firstCell: number;
  readonly perMm: ArrayLike<number>;
  /** Tied to a drawn place, so to be spread by the doubt of where that is. */
  readonly placed: boolean;
}
