import type { HazardField } from '../chafe/hazard-field.ts';
import type { CircuitLine } from '../circuit/circuit-line.ts';
import type { ComponentHypothesis, Evidence, Hypotheses } from '../locate/hypotheses.ts';
import { layHypotheses } from '../locate/hypotheses.ts';
import { type ClassFactors, logPrior } from '../locate/prior.ts';
import { readingsEvidence } from '../locate/readings-evidence.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { EntryId } from '../quantity/id.ts';
import type { JobProblem } from '../quantity/problem.ts';
import { circuitComponents } from './circuit-components.ts';
import { evidenceEntries } from './evidence-entries.ts';
import { failureTypeFactors } from './failure-type-factors.ts';
import { type HeardReadings, hearReadings } from './hear-readings.ts';
import type { Job, JobEntry } from './job-document.ts';
import { type JobEvidence, jobEvidence } from './job-evidence.ts';
import { faultsOfEntries } from './job-faults.ts';
import type { ReadingsCache } from './readings-cache.ts';
import { standingEntries } from './standing-entries.ts';
import { takenReadings } from './taken-readings.ts';
import { allEvidence } from './weigh-readings.ts';

/** What a job and its map bring to the question where the fault is, before it is answered. */
export interface WeighedJob {
  /** Entries that stand and fit the map. */
  readonly entries: readonly JobEntry[];
  /** Entries that stand and do not fit, with what they name. */
  readonly faults: ReadonlyMap<EntryId, JobProblem>;
  readonly parts: readonly ComponentHypothesis[];
  readonly hypotheses: Hypotheses;
  /** The log prior for a hazard on the same cells. */
  readonly priorOf: (field: HazardField) => Float64Array;
  readonly said: JobEvidence;
  readonly heard: HeardReadings;
  readonly evidence: readonly Evidence[];
}

/**
 * Gathers a job's hypotheses, prior and evidence on the cells of its circuit. Entries that speak of things the
 * map does not have are left out and named.
 * @example
 * weighedJob(sample.map, sample.line, sample.field.cellEdgesMm, sample.job).parts.length // => 3
 */
export function weighedJob(
  map: MapDocument,
  line: CircuitLine,
  cellEdgesMm: Float64Array,
  job: Job,
  options: { readonly readingDraws?: number; readonly readingsCache?: ReadingsCache } = {},
): WeighedJob {
  const standing = evidenceEntries(standingEntries(job));
  const faults = faultsOfEntries(map, standing);
  const entries = standing.filter((entry) => !faults.has(entry.id));
  const components = circuitComponents(map, line);
  const parts = components.map(({ part }) => part);
  const weights = components.map(({ weight }) => weight);
  const hypotheses = layHypotheses(cellEdgesMm, parts);
  const factors = failureTypeFactors(job.failureType, line.circuit);
  const said = jobEvidence(map, line, job, entries);
  const heard = hearReadings(map, line, hypotheses, takenReadings(entries), {
    draws: options.readingDraws,
    cache: options.readingsCache,
  });
  return {
    entries,
    faults,
    parts,
    hypotheses,
    priorOf: (field) => keptPrior(hypotheses, field, weights, factors),
    said,
    heard,
    evidence: allEvidence(said, heard.together ? readingsEvidence(heard.together) : null),
  };
}

/** The newest prior of each hazard, with what it was asked for. */
const priors = new WeakMap<HazardField, { readonly asked: string; readonly row: Float64Array }>();

/** Looks, readings and panels, which come one a click, do not change the prior: it is worked out once. */
function keptPrior(
  hypotheses: Hypotheses,
  field: HazardField,
  weights: readonly number[],
  factors: ClassFactors,
): Float64Array {
  // The cells are the field's own, unless somebody asks otherwise.
  if (hypotheses.cellEdgesMm !== field.cellEdgesMm) return logPrior(hypotheses, field, weights, factors);
  const asked = JSON.stringify([weights, factors]);
  const before = priors.get(field);
  if (before?.asked === asked) return before.row;
  const row = logPrior(hypotheses, field, weights, factors);
  priors.set(field, { asked, row });
  return row;
}
