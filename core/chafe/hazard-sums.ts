import type { CauseFigures, CauseKind } from './cause.ts';
import type { Mechanism } from './class-split.ts';
import type { MechanismHazard } from './mechanism-hazard.ts';
import type { RunContext } from './run-context.ts';

/** What is said of a cause before its cells are filled. */
export interface CauseHead {
  readonly cause: CauseKind;
  readonly mechanism: Mechanism;
  readonly thing: string | null;
  /** Tied to a drawn place, so to be spread by the doubt of where that is. */
  readonly placed: boolean;
  /** Asked for only where causes are listed. */
  readonly figures: () => CauseFigures;
}

/** Takes what the mechanisms find on one run. */
export interface HazardSums {
  /** All cells of the run, to add a cause's hazard per hour and mm to. */
  readonly cellsOf: (head: CauseHead) => Float64Array;
}

/** Works out what one mechanism, or one kind of thing, does to a run. */
export type MechanismOfRun = (run: RunContext, sums: HazardSums) => void;

/** Room for what is tied to drawn places on one run; nothing is kept in it. */
let placedRoom = new Float64Array(0);

/** The hazard of a run with all causes added up, those tied to drawn places apart. */
export interface WholeSums extends HazardSums {
  readonly lying: Float64Array;
  /** Good until the next run's are asked for. */
  readonly placed: Float64Array;
}

/**
 * Adds all causes up as they come: what ranking needs.
 * @example
 * wholeSums(3).lying.length // => 3
 */
export function wholeSums(cellCount: number): WholeSums {
  if (placedRoom.length < cellCount) placedRoom = new Float64Array(2 * cellCount);
  const lying = new Float64Array(cellCount);
  const placed = placedRoom;
  placed.fill(0, 0, cellCount);
  return { lying, placed, cellsOf: (head) => (head.placed ? placed : lying) };
}

/**
 * What some mechanisms do to a run, cause by cause, each in the cells it reaches; causes that come to nothing
 * are left out. What a reason needs. O(cells x causes).
 * @example
 * listedCauses(runContext(sample.middle, runSurroundings(sample.map, sample.middle, defaultAssumptions), defaultAssumptions), [bareBody]).length // => 1
 */
export function listedCauses(
  run: RunContext,
  mechanisms: readonly MechanismOfRun[],
): readonly MechanismHazard[] {
  const found: { readonly head: CauseHead; readonly cells: Float64Array }[] = [];
  const cellsOf = (head: CauseHead) => {
    const cells = new Float64Array(run.cellCount);
    found.push({ head, cells });
    return cells;
  };
  for (const mechanism of mechanisms) mechanism(run, { cellsOf });
  const listed: MechanismHazard[] = [];
  for (const { head, cells } of found) {
    let first = 0;
    while (first < cells.length && cells[first] === 0) first++;
    if (first === cells.length) continue;
    let end = cells.length;
    while (cells[end - 1] === 0) end--;
    const { cause, mechanism, thing, placed, figures } = head;
    listed.push({
      cause,
      mechanism,
      thing,
      figures: figures(),
      firstCell: first,
      perMm: cells.slice(first, end),
      placed,
    });
  }
  return listed;
}
