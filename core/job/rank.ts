import { allNodes, type CircuitLine } from '../circuit/circuit-line.ts';
import { layJoined } from '../circuit/joined-wires.ts';
import { touchedBy } from '../history/raised-places.ts';
import type { History } from '../history/teach.ts';
import type { MapDocument } from '../map/map-document.ts';
import { mapFaults } from '../map/map-faults.ts';
import { offClosure } from '../map/panel-order.ts';
import type { Circuit } from '../map/records.ts';
import type { CircuitId } from '../quantity/id.ts';
import type { Problem } from '../quantity/problem.ts';
import { fail, ok, type Result } from '../quantity/result.ts';
import { historyEffect } from './history-effect.ts';
import type { Job } from './job-document.ts';
import { jobHazard } from './job-hazard.ts';
import { planWishes } from './plan-wishes.ts';
import { type RankOptions, rankOnLine } from './rank-on-line.ts';
import type { Ranking, Told, ToldEffects } from './ranking.ts';
import { standingEntries } from './standing-entries.ts';

export interface RankJobOptions extends RankOptions {
  /** What past jobs taught about this map (`teach`); null or absent leaves them out. */
  readonly history?: History | null;
  /** Says as well what past jobs and each answer at intake did: a weighing of the evidence for each. */
  readonly withTold?: boolean;
}

/**
 * The tool's main answer: where on the job's circuit the fault most likely is, and what to open first.
 * Pure: the same map and job give the same answer. Refuses a job of another map, without a circuit,
 * with a circuit that is not traced or does not hang together, and map faults on the circuit's own
 * path; faults elsewhere on the map do not stop it. About O(n log n) in the cells of the circuit.
 * @example
 * rank(sample.map, sample.job).value.circuit.lengthMm // => 1500
 */
export function rank(map: MapDocument, job: Job, options: RankJobOptions = {}): Result<Ranking> {
  const line = searchedLine(map, job);
  if (!line.ok) return line;
  const history = usedHistory(job, options.history);
  const field = jobHazard(map, line.value, job, history);
  if (!options.withTold) return ok(rankOnLine(map, line.value, field, job, options));
  const without = toldIn(job, history).map((told) => ({
    told,
    field:
      told === 'past-jobs'
        ? jobHazard(map, line.value, job, null)
        : jobHazard(map, line.value, withoutAnswer(job, told), history),
  }));
  const touched = new Map<Answer, number>();
  for (const { word, lengthMm } of touchedBy(map, line.value, field.cellEdgesMm, job))
    touched.set(word, lengthMm);
  const told: ToldEffects = {
    answers: answersOf(job).map((word) => ({ word, lengthMm: touched.get(word) ?? 0 })),
    pastJobs: history && {
      jobs: history.jobs,
      jobsOnMap: history.jobsOnMap,
      effects: historyEffect(map, line.value, history),
    },
  };
  return ok({ ...rankOnLine(map, line.value, field, job, { ...options, without }), told });
}

/**
 * What past jobs taught, as far as this job may use it: null without any, or where they are switched off.
 * @example
 * usedHistory(sample.job, teach([], sample.map)) // => null
 */
export function usedHistory(job: Job, history: History | null | undefined): History | null {
  if (!history || history.jobs === 0) return null;
  return planWishes(standingEntries(job)).usePastJobs ? history : null;
}

type Answers = Pick<Job, 'recentWork' | 'symptoms'>;
type Answer = Exclude<Told, 'past-jobs'>;

const answersOf = ({ recentWork = [], symptoms = [] }: Answers): readonly Answer[] => [
  ...recentWork,
  ...symptoms,
];

const toldIn = (job: Answers, history: History | null): readonly Told[] => [
  ...(history ? (['past-jobs'] as const) : []),
  ...answersOf(job),
];

const withoutAnswer = ({ recentWork = [], symptoms = [] }: Answers, answer: Answer): Answers => ({
  recentWork: recentWork.filter((word) => word !== answer),
  symptoms: symptoms.filter((word) => word !== answer),
});

/** Circuits laid straight already: a map never changes, and a search asks for the same one at every click. */
const laid = new WeakMap<MapDocument, Map<CircuitId, Result<CircuitLine>>>();

/**
 * The job's circuit laid straight, or the first thing that keeps it from being searched. Worked out once
 * for each map and circuit.
 * @example
 * searchedLine(sample.map, { ...sample.job, circuitId: null }).problem // => { code: 'job-circuit-unset' }
 */
export function searchedLine(map: MapDocument, job: Job): Result<CircuitLine> {
  if (job.mapId !== map.id) return fail({ code: 'job-map-mismatch', jobMap: job.mapId, map: map.id });
  if (job.circuitId === null) return fail({ code: 'job-circuit-unset' });
  const circuit = map.circuits.get(job.circuitId);
  if (!circuit) {
    return fail({ code: 'job-reference', entry: job.id, field: 'circuitId', missing: job.circuitId });
  }
  const lines = laid.get(map) ?? new Map<CircuitId, Result<CircuitLine>>();
  laid.set(map, lines);
  const line = lines.get(circuit.id) ?? soundLine(map, circuit);
  lines.set(circuit.id, line);
  return line;
}

/** The circuit laid straight, or the first fault of the map that its answer rests on. */
function soundLine(map: MapDocument, circuit: Circuit): Result<CircuitLine> {
  const line = layJoined(map, circuit);
  if (!line.ok) return line;
  const touched = thingsOnPath(map, line.value);
  const fault = mapFaults(map).find((each) => namesOf(each).some((name) => touched.has(name)));
  return fault ? fail(fault) : line;
}

/** Ids of everything the circuit's answer rests on: its runs, their clips, its nodes, and panels in the way. */
function thingsOnPath(map: MapDocument, line: CircuitLine): ReadonlySet<string> {
  const things = new Set<string>([line.circuit.id]);
  const wanted = line.spans.flatMap(({ segment }) => segment.tags.map((tag) => tag.panelId));
  for (const { segment } of line.spans) {
    things.add(segment.id);
    for (const clip of segment.clips) things.add(clip.id);
  }
  for (const { nodeId } of allNodes(line)) {
    things.add(nodeId);
    wanted.push(...(map.nodes.get(nodeId)?.panelIds ?? []));
  }
  for (const panelId of offClosure(map.panels, wanted)) things.add(panelId);
  return things;
}

function namesOf(problem: Problem): readonly string[] {
  if (problem.code === 'panel-cycle') return problem.panels;
  if ('thing' in problem) return [problem.thing];
  return 'circuit' in problem ? [problem.circuit] : [];
}
