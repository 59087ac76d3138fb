import { type Evidence, placeEvidence } from './hypotheses.ts';
import { coveredShare, type StationRange } from './station-ranges.ts';

/** Where another circuit lies beside the searched one, and which of its parts it also passes. */
export interface SharedRuns {
  readonly ranges: readonly StationRange[];
  readonly nodeIds: ReadonlySet<string>;
}

/** When a bundle is damaged at a place, each wire in it there fails with this chance (judgement). */
export const wireHitChance = 0.7;

/** How often chafe that stops one wire is bundle damage rather than that wire alone (judgement). */
export const bundleShare = 0.3;

/** Chance that another circuit fails for a reason of its own (judgement). */
export const coincidence = 0.02;

/**
 * What the other circuits say. Where the bundle is damaged each wire passing there fails with
 * `wireHitChance`; where only our wire is damaged the others say nothing. Circuits that fail together
 * so raise the stretches they share, and working ones lower theirs a little.
 *
 * `bundle` is the prior share of bundle damage; with 1 every fault is bundle damage.
 * @example
 * sharedRunsEvidence([], [{ ranges: [{ fromMm: 0, toMm: 10 }], nodeIds: new Set() }], 1)(layHypotheses(new Float64Array([0, 10, 20]), []))[0] // => Math.log(0.3)
 */
export function sharedRunsEvidence(
  failing: readonly SharedRuns[],
  working: readonly SharedRuns[],
  bundle: number = bundleShare,
): Evidence {
  const alone = failing.length * Math.log(coincidence);
  const mixed = (passes: (other: SharedRuns) => number): number => {
    let bundled = 1;
    for (const other of failing) {
      const share = passes(other);
      bundled *= share * wireHitChance + (1 - share) * coincidence;
    }
    for (const other of working) bundled *= 1 - wireHitChance * passes(other);
    return Math.log(bundle * bundled + (1 - bundle) * Math.exp(alone));
  };
  return (hypotheses) =>
    placeEvidence(
      hypotheses,
      (cell) => {
        const fromMm = hypotheses.cellEdgesMm[cell] as number;
        const toMm = hypotheses.cellEdgesMm[cell + 1] as number;
        return mixed((other) => coveredShare(other.ranges, fromMm, toMm));
      },
      (component) => mixed((other) => (other.nodeIds.has(component.nodeId) ? 1 : 0)),
      alone,
    );
}
