import type { CircuitLine } from '../circuit/circuit-line.ts';
import {
  type LikelihoodOptions,
  otherCircuitId,
  type ReadingsLikelihood,
  readingsLogLikelihood,
} from '../circuit/reading-likelihood.ts';
import type { TakenReading } from '../circuit/usable-readings.ts';
import type { Hypotheses } from '../locate/hypotheses.ts';
import { cellMiddlesMm } from '../locate/readings-evidence.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { UnusedReading } from './ranking.ts';
import type { ReadingsCache } from './readings-cache.ts';
import type { TakenEntry } from './taken-readings.ts';

/** Draws of the shared errors when nobody says otherwise; none is quick and takes usual values as known. */
export const usualReadingDraws = 64;

/** What the electrical readings of a job say. */
export interface HeardReadings {
  readonly entries: readonly TakenEntry[];
  /** All together; null without a usable one. */
  readonly together: ReadingsLikelihood | null;
  /** Some of them by their places in `entries`, on the cells given; worked out when asked for, without draws. */
  readonly some: (cells: Hypotheses, places: readonly number[]) => ReadingsLikelihood;
  /** Places in `entries` of those that count. */
  readonly used: readonly number[];
  readonly unused: readonly UnusedReading[];
}

/** Notes that mean a reading was left out; a plugged-in part only spoils a capacitance. */
const leavesOut: ReadonlySet<string> = new Set([
  'forbidden-duty',
  'lead-not-on-circuit',
  'other-circuit-unknown',
  'live-while-measured',
]);

/**
 * Works out what a job's electrical readings say about every hypothesis, once for the same map and
 * readings when a cache is passed. O(draws x classes x cells x 41 x readings), the cells thinned to 400.
 * @example
 * hearReadings(sample.map, sample.line, layHypotheses(sample.field.cellEdgesMm, []), []).together // => null
 */
export function hearReadings(
  map: MapDocument,
  line: CircuitLine,
  hypotheses: Hypotheses,
  entries: readonly TakenEntry[],
  options: { readonly draws?: number | undefined; readonly cache?: ReadingsCache | undefined } = {},
): HeardReadings {
  const edges = hypotheses.cellEdgesMm;
  const all = entries.map(({ taken }) => taken);
  const other = otherCircuitId(line, all);
  const ask = (cells: Hypotheses, taken: readonly TakenReading[], draws: number): ReadingsLikelihood => {
    const work = (): ReadingsLikelihood => {
      const asked: LikelihoodOptions = { stationsMm: cellMiddlesMm(cells.cellEdgesMm), draws };
      return readingsLogLikelihood(map, line, taken, { ...asked, cautious: true, otherCircuitId: other });
    };
    if (!options.cache) return work();
    const question = JSON.stringify([line.circuit.id, other, cells.cellCount, draws, taken]);
    return options.cache.kept(map, edges, question, work);
  };
  const together = all.length > 0 ? ask(hypotheses, all, options.draws ?? usualReadingDraws) : null;
  const unused: UnusedReading[] = [];
  for (const note of together?.notes ?? []) {
    if (!('reading' in note)) continue;
    const entry = entries[note.reading] as TakenEntry;
    const isLost =
      leavesOut.has(note.code) ||
      (note.code === 'end-part-plugged-in' && entry.taken.reading.test === 'capacitance');
    if (isLost) unused.push({ entryId: entry.entryId, why: note.code as UnusedReading['why'] });
  }
  const lost = new Set(unused.map(({ entryId }) => entryId));
  return {
    entries,
    together: together && together.used > 0 ? together : null,
    some: (cells, places) =>
      ask(
        cells,
        places.map((place) => all[place] as TakenReading),
        0,
      ),
    used: entries.flatMap(({ entryId }, i) => (lost.has(entryId) ? [] : [i])),
    unused,
  };
}
