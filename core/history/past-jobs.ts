import type { CauseKind } from '../chafe/cause.ts';
import type { RubSpotKind } from '../map/kinds.ts';
import type { JobId, MapId } from '../quantity/id.ts';

/**
 * Amounts by kind of cause, by kind of rub spot and by spot; what is absent is nothing. What a drawn spot does
 * counts for its kind and for itself, not for a kind of cause as well.
 */
export interface Tally {
  readonly causes: Readonly<Partial<Record<CauseKind, number>>>;
  readonly rubSpotKinds: Readonly<Partial<Record<RubSpotKind, number>>>;
  readonly rubSpots: Readonly<Record<string, number>>;
}

/** Nothing of anything. */
export const emptyTally: Tally = { causes: {}, rubSpotKinds: {}, rubSpots: {} };

/**
 * What one past job teaches: finds (at most one in all, shared out over what may have caused it) and the finds
 * the model expected in what was searched. Plain data, so that it can be kept.
 */
export interface PastJob {
  readonly jobId: JobId;
  readonly mapId: MapId;
  readonly found: Tally;
  readonly expected: Tally;
}

/** What several past jobs teach together, and how many they are. */
export interface PastSum {
  readonly jobs: number;
  readonly found: Tally;
  readonly expected: Tally;
}

/**
 * The sum of two tallies, the second times a factor; minus one takes it back.
 * @example
 * addTally({ causes: { wet: 1 }, rubSpotKinds: {}, rubSpots: {} }, { causes: { wet: 1 }, rubSpotKinds: { burr: 2 }, rubSpots: {} }, 0.5) // => { causes: { wet: 1.5 }, rubSpotKinds: { burr: 1 }, rubSpots: {} }
 */
export function addTally(a: Tally, b: Tally, factor = 1): Tally {
  return {
    causes: addAmounts(a.causes, b.causes, factor),
    rubSpotKinds: addAmounts(a.rubSpotKinds, b.rubSpotKinds, factor),
    rubSpots: addAmounts(a.rubSpots, b.rubSpots, factor),
  };
}

function addAmounts<T extends Readonly<Record<string, number | undefined>>>(a: T, b: T, factor: number): T {
  const sum: Record<string, number> = {};
  for (const [key, amount] of Object.entries(a)) sum[key] = amount ?? 0;
  for (const [key, amount] of Object.entries(b)) sum[key] = (sum[key] ?? 0) + factor * (amount ?? 0);
  return sum as T;
}

/**
 * What some jobs teach together.
 * @example
 * tallyJobs([]).found // => { causes: {}, rubSpotKinds: {}, rubSpots: {} }
 */
export function tallyJobs(jobs: readonly PastJob[]): { readonly found: Tally; readonly expected: Tally } {
  let found = emptyTally;
  let expected = emptyTally;
  for (const job of jobs) {
    found = addTally(found, job.found);
    expected = addTally(expected, job.expected);
  }
  return { found, expected };
}
