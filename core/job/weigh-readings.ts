import type { CircuitLine } from '../circuit/circuit-line.ts';
import { coarseHypotheses, coarseLogs } from '../locate/coarse-cells.ts';
import type { Evidence, Hypotheses } from '../locate/hypotheses.ts';
import { addEvidence } from '../locate/weigh-evidence.ts';
import { findContradictions } from './contradictions.ts';
import type { HeardReadings } from './hear-readings.ts';
import type { JobEntry } from './job-document.ts';
import type { JobEvidence } from './job-evidence.ts';
import type { Contradiction, ReadingEffect, UnusedReading } from './ranking.ts';
import { readingEffects } from './reading-effects.ts';

/** What is told about the readings of a job besides the answer they lead to. */
export interface WeighedReadings {
  readonly effects: readonly ReadingEffect[];
  readonly contradictions: readonly Contradiction[];
  readonly unused: readonly UnusedReading[];
}

/**
 * Effects, contradictions and what could not be used, on cells thinned to 200. A quick answer leaves the
 * first two to the refined one.
 * @example
 * weighReadings(sample.line, layHypotheses(new Float64Array([0, 10]), []), new Float64Array(6), { pieces: [], placed: [], unused: [] }, hearReadings(sample.map, sample.line, layHypotheses(new Float64Array([0, 10]), []), []), []).effects // => []
 */
export function weighReadings(
  line: CircuitLine,
  fine: Hypotheses,
  logPriorRow: Float64Array,
  said: JobEvidence,
  heard: HeardReadings,
  entries: readonly JobEntry[],
  isQuick = false,
): WeighedReadings {
  const unused = [...said.unused, ...heard.unused];
  if (isQuick) return { effects: [], contradictions: [], unused };
  const order = entries.flatMap((entry) => (entry.type === 'reading' ? [entry.id] : []));
  if (order.length === 0) return { effects: [], contradictions: [], unused };
  const cells = coarseHypotheses(fine);
  const base = coarseLogs(fine, addEvidence(fine, logPriorRow, said.pieces));
  const placed = said.placed.map(({ entryId, evidence }) => ({ entryId, row: evidence(cells) }));
  return {
    effects: readingEffects(line, { cells, base, placed, heard, unused, order }),
    contradictions: findContradictions(cells, heard, placed),
    unused,
  };
}

/**
 * Everything a job says, as one list to weigh.
 * @example
 * allEvidence({ pieces: [], placed: [], unused: [] }, null) // => []
 */
export function allEvidence(said: JobEvidence, readings: Evidence | null): Evidence[] {
  return [...said.pieces, ...said.placed.map(({ evidence }) => evidence), ...(readings ? [readings] : [])];
}
