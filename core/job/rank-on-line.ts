import type { HazardField } from '../chafe/hazard-field.ts';
import type { CircuitLine } from '../circuit/circuit-line.ts';
import { cumulate } from '../locate/cumulative.ts';
import { layHypotheses } from '../locate/hypotheses.ts';
import { logPrior } from '../locate/prior.ts';
import { readingsEvidence } from '../locate/readings-evidence.ts';
import { weighEvidence } from '../locate/weigh-evidence.ts';
import type { MapDocument } from '../map/map-document.ts';
import { circuitComponents } from './circuit-components.ts';
import { digLooks } from './dig-looks.ts';
import { type DigPlanOptions, digPlan } from './dig-plan.ts';
import { evidenceEntries } from './evidence-entries.ts';
import { failureTypeFactors } from './failure-type-factors.ts';
import { hearReadings } from './hear-readings.ts';
import type { Job } from './job-document.ts';
import { jobEvidence } from './job-evidence.ts';
import { faultsOfEntries } from './job-faults.ts';
import { pathStretches } from './path-stretches.ts';
import { rankWarnings } from './rank-warnings.ts';
import type { Ranking } from './ranking.ts';
import type { ReadingsCache } from './readings-cache.ts';
import { panelsOff, standingEntries } from './standing-entries.ts';
import { summarisePosterior } from './summarise-posterior.ts';
import { takenReadings } from './taken-readings.ts';
import { allEvidence, weighReadings } from './weigh-readings.ts';

export interface RankOptions extends DigPlanOptions {
  /** Chance that damage on an opened stretch is noticed, 0 to 1. */
  readonly lookQuality?: number;
  /** Draws of what electrical readings share; 64 when absent, 0 for a quick answer to be refined. */
  readonly readingDraws?: number;
  /** Where what the readings say is remembered from one call to the next. */
  readonly readingsCache?: ReadingsCache;
}

/**
 * The ranking of a circuit that is already laid straight with its hazard worked out; these two depend
 * on the map alone, so a caller may keep them while only the job changes. Entries that speak of things
 * the map does not have are left out and named in the warnings.
 * @example
 * rankOnLine(sample.map, sample.line, sample.field, sample.job).circuit.lengthMm // => 1500
 */
export function rankOnLine(
  map: MapDocument,
  line: CircuitLine,
  field: HazardField,
  job: Job,
  options: RankOptions = {},
): Ranking {
  const standing = evidenceEntries(standingEntries(job));
  const faults = faultsOfEntries(map, standing);
  const entries = standing.filter((entry) => !faults.has(entry.id));
  const components = circuitComponents(map, line);
  const parts = components.map(({ part }) => part);
  const hypotheses = layHypotheses(field.cellEdgesMm, parts);
  const prior = logPrior(
    hypotheses,
    field,
    components.map(({ weight }) => weight),
    failureTypeFactors(job.failureType, line.circuit),
  );
  const said = jobEvidence(map, line, job, entries);
  const heard = hearReadings(map, line, hypotheses, takenReadings(entries), {
    draws: options.readingDraws,
    cache: options.readingsCache,
  });
  const evidence = allEvidence(said, heard.together ? readingsEvidence(heard.together) : null);
  const weighed = weighReadings(line, hypotheses, prior, said, heard, entries);
  const stretches = pathStretches(line);
  const posterior = summarisePosterior(hypotheses, weighEvidence(hypotheses, prior, evidence), stretches);
  const curve = cumulate(posterior.cellEdgesMm, posterior.cellProbability);
  const looks = digLooks(map, stretches, posterior, curve, parts, options.lookQuality);
  return {
    circuit: { id: line.circuit.id, name: line.circuit.name, lengthMm: line.lengthMm },
    posterior,
    ...digPlan(field, looks, map.panels, panelsOff(entries), options),
    readings: weighed.effects,
    contradictions: weighed.contradictions,
    nextTests: [],
    warnings: [
      ...rankWarnings(map, line, weighed.unused),
      ...[...faults].map(([entryId, problem]) => ({ code: 'entry-ignored' as const, entryId, problem })),
    ],
  };
}
