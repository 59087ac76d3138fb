import { layJoined } from '#core/circuit/joined-wires.ts';
import type { Ranking } from '#core/job/ranking.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { reasonSentence } from '#renderer/language/reasons.ts';
import { testInstruction } from '#renderer/language/tests.ts';
import { nameOf } from './name-of.ts';
import { testNames } from './tests-text.ts';
import { warningLine } from './warning-line.ts';

/** The ranking as data with field names that stay the same from release to release. */
export function digJson(map: MapDocument, ranking: Ranking): object {
  const { posterior } = ranking;
  const name = (id: string): string => nameOf(map, id);
  const circuit = [...map.circuits.values()].find(({ id }) => id === ranking.circuit.id);
  const line = circuit ? layJoined(map, circuit) : null;
  const tests = line?.ok ? ranking.nextTests : [];
  return {
    circuit: ranking.circuit,
    posterior: {
      classes: posterior.classes,
      stretches: posterior.stretches,
      medianStationMm: posterior.medianStationMm,
      credible80Mm: posterior.credible80Mm,
    },
    digPlan: ranking.digPlan.map((step) => ({
      rank: step.rank,
      takeOff: step.takeOff,
      minutes: step.minutes,
      look: {
        segmentIds: step.look.segmentIds,
        fromMm: step.look.fromMm,
        toMm: step.look.toMm,
      },
      probability: step.probability,
      runningMinutes: step.runningMinutes,
      runningProbability: step.runningProbability,
      reason: reasonSentence(step.reason, name),
    })),
    expectedMinutes: ranking.expectedMinutes,
    readings: ranking.readings,
    contradictions: ranking.contradictions,
    nextTests: tests.map((test) => ({
      instruction: line?.ok ? testInstruction(test, testNames(map, line.value)) : '',
      ...test,
    })),
    warnings: ranking.warnings.map((warning) => ({
      code: warning.code,
      message: warningLine(map, warning),
    })),
  };
}
