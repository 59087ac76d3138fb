import { type Evidence, placeEvidence } from './hypotheses.ts';
import { coveredShare, type StationRange } from './station-ranges.ts';

/** A piece of the searched circuit and how many other circuits are drawn through it. */
export interface SharedRange extends StationRange {
  readonly circuits: number;
}

/** Where another circuit lies beside the searched one, and which of its parts it also passes. */
export interface SharedRuns {
  readonly ranges: readonly SharedRange[];
  readonly nodeIds: ReadonlySet<string>;
}

/** When a bundle is damaged at a place, each wire in it there fails with this chance (judgement). */
export const wireHitChance = 0.7;

/** How often chafe that stops one wire is bundle damage rather than that wire alone (judgement). */
export const bundleShare = 0.3;

/** A wire that touches another touches one that is drawn, each as likely, with this chance (judgement). */
export const drawnChance = 0.8;

/** Chance that the wire touched shows it too (judgement). */
export const touchedFailsChance = 0.9;

/** Chance that another circuit fails for a reason of its own (judgement). */
export const coincidence = 0.02;

/**
 * What the other circuits say. Where the bundle is damaged each wire passing there fails with
 * `wireHitChance`; where only our wire is damaged the others say nothing. Circuits that fail together
 * so raise the stretches they share, and working ones lower theirs a little. Two wires that touch mostly
 * both show it: there a failing neighbour speaks for touching it, working ones speak against touching them.
 *
 * `bundle` is the prior share of bundle damage; with 1 every fault is bundle damage.
 * @example
 * sharedRunsEvidence([], [{ ranges: [{ fromMm: 0, toMm: 10, circuits: 1 }], nodeIds: new Set() }], 1)(layHypotheses(new Float64Array([0, 10, 20]), []))[0] // => Math.log(0.3)
 */
export function sharedRunsEvidence(
  failing: readonly SharedRuns[],
  working: readonly SharedRuns[],
  bundle: number = bundleShare,
): Evidence {
  const alone = failing.length * Math.log(coincidence);
  const mixed = (passes: (other: SharedRuns) => number, single = Math.exp(alone)): number => {
    let bundled = 1;
    for (const other of failing) {
      const share = passes(other);
      bundled *= share * wireHitChance + (1 - share) * coincidence;
    }
    for (const other of working) bundled *= 1 - wireHitChance * passes(other);
    return Math.log(bundle * bundled + (1 - bundle) * single);
  };
  return (hypotheses) => {
    const { cellCount, cellEdgesMm, classes } = hypotheses;
    const passing = (cell: number) => (other: SharedRuns) =>
      coveredShare(other.ranges, cellEdgesMm[cell] as number, cellEdgesMm[cell + 1] as number);
    const row = placeEvidence(
      hypotheses,
      (cell) => mixed(passing(cell)),
      (component) => mixed((other) => (other.nodeIds.has(component.nodeId) ? 1 : 0)),
      alone,
    );
    const first = classes.indexOf('wire-to-wire') * cellCount;
    for (let cell = 0; cell < cellCount; cell++) {
      const middle = ((cellEdgesMm[cell] as number) + (cellEdgesMm[cell + 1] as number)) / 2;
      row[first + cell] = mixed(passing(cell), touchChance(failing, working, middle));
    }
    return row;
  };
}

/** Chance of what the others do when the searched wire touches one of those that pass the station. */
function touchChance(
  failing: readonly SharedRuns[],
  working: readonly SharedRuns[],
  stationMm: number,
): number {
  const at = ({ ranges }: SharedRuns): SharedRange | undefined =>
    ranges.find(({ fromMm, toMm }) => fromMm <= stationMm && stationMm <= toMm);
  const fails = failing.flatMap((other) => at(other) ?? []);
  const works = working.flatMap((other) => at(other) ?? []);
  const listed = fails.length + works.length;
  const circuits = Math.max(listed, ...[...fails, ...works].map((range) => range.circuits));
  const none = coincidence ** failing.length;
  if (circuits === 0) return none;
  const unlisted = 1 - drawnChance + (drawnChance * (circuits - listed)) / circuits;
  const each = drawnChance / circuits;
  return (
    unlisted * none +
    fails.length * each * touchedFailsChance * coincidence ** (failing.length - 1) +
    works.length * each * (1 - touchedFailsChance) * none
  );
}
