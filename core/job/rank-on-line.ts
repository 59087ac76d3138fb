import type { HazardField } from '../chafe/hazard-field.ts';
import type { CircuitLine } from '../circuit/circuit-line.ts';
import { coarseHypotheses, coarseProbability } from '../locate/coarse-cells.ts';
import { cumulate } from '../locate/cumulative.ts';
import { weighEvidence } from '../locate/weigh-evidence.ts';
import type { MapDocument } from '../map/map-document.ts';
import { digLooks } from './dig-looks.ts';
import { type DigPlanOptions, digPlan } from './dig-plan.ts';
import type { Job } from './job-document.ts';
import { nextTests } from './next-tests.ts';
import { pathStretches } from './path-stretches.ts';
import { planWishes } from './plan-wishes.ts';
import { rankWarnings } from './rank-warnings.ts';
import type { Posterior, Ranking, Told } from './ranking.ts';
import type { ReadingsCache } from './readings-cache.ts';
import { panelsOff } from './standing-entries.ts';
import { summarisePosterior } from './summarise-posterior.ts';
import { weighReadings } from './weigh-readings.ts';
import { weighedJob } from './weighed-job.ts';

export interface RankOptions extends DigPlanOptions {
  /** Chance that damage on an opened stretch is noticed, 0 to 1. */
  readonly lookQuality?: number;
  /** Draws of what electrical readings share; 64 when absent. With 0 the answer is quick and to be refined: without effects and contradictions of readings. */
  readonly readingDraws?: number;
  /** Where what the readings say is remembered from one call to the next. */
  readonly readingsCache?: ReadingsCache;
  /** Works out which tests pay as well: some tens of plans, for a worker or the command line. */
  readonly withTests?: boolean;
  /** The hazard as it would be without one piece of evidence each, to say what each did to every opening. */
  readonly without?: readonly { readonly told: Told; readonly field: HazardField }[];
}

/**
 * The ranking of a circuit that is already laid straight with its hazard worked out; these two depend
 * on the map alone, so a caller may keep them while only the job changes. Entries that speak of things
 * the map does not have are left out and named in the warnings. The job's own wishes for the plan hold
 * where the options say nothing else.
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
  const known = weighedJob(map, line, field.cellEdgesMm, job, options);
  const { entries, faults, parts, hypotheses, said, heard, evidence } = known;
  const prior = known.priorOf(field);
  const weighed = weighReadings(line, hypotheses, prior, said, heard, entries, options.readingDraws === 0);
  const stretches = pathStretches(line);
  const probability = weighEvidence(hypotheses, prior, evidence);
  const posterior = summarisePosterior(hypotheses, probability, stretches);
  const looksOf = (belief: Posterior) => {
    const curve = cumulate(belief.cellEdgesMm, belief.cellProbability);
    return digLooks(map, stretches, belief, curve, parts, options.lookQuality);
  };
  const without = (options.without ?? []).map(({ told, field: other }) => {
    const belief = weighEvidence(hypotheses, known.priorOf(other), evidence);
    const looks = looksOf(summarisePosterior(hypotheses, belief, stretches));
    return { told, chances: new Map(looks.map((look) => [look.id, look.probability])) };
  });
  const wishes = { ...planWishes(entries), ...options, without };
  return {
    circuit: { id: line.circuit.id, name: line.circuit.name, lengthMm: line.lengthMm },
    posterior,
    ...digPlan(field, looksOf(posterior), map.panels, panelsOff(entries), wishes),
    readings: weighed.effects,
    contradictions: weighed.contradictions,
    nextTests: options.withTests
      ? nextTests({
          map,
          line,
          cells: coarseHypotheses(hypotheses),
          probability: coarseProbability(hypotheses, probability),
          stretches,
          entries,
          medianMm: posterior.medianStationMm,
          parts,
          off: panelsOff(entries),
          lookQuality: options.lookQuality,
          alsoFailing: job.alsoFailingCircuitIds,
          working: job.workingCircuitIds,
        })
      : [],
    warnings: [
      ...rankWarnings(map, line, weighed.unused),
      ...[...faults].map(([entryId, problem]) => ({ code: 'entry-ignored' as const, entryId, problem })),
    ],
  };
}
