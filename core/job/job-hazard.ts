import { type ChafeAssumptions, defaultAssumptions } from '../chafe/chafe-assumptions.ts';
import { hazardAlong } from '../chafe/hazard-along.ts';
import type { HazardField } from '../chafe/hazard-field.ts';
import type { CircuitLine } from '../circuit/circuit-line.ts';
import { raisedPlaces } from '../history/raised-places.ts';
import { type History, withHistory } from '../history/teach.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { Job } from './job-document.ts';

/** One answer for a line, with what it was asked for. */
interface Kept {
  readonly map: MapDocument;
  readonly told: string;
  readonly history: History | null;
  readonly field: HazardField;
}
const kept = new WeakMap<CircuitLine, readonly Kept[]>();

/** Answers kept for each line: as told, without past jobs, and without some of the answers at intake. */
const mostKept = 8;

/**
 * The hazard of a job's circuit: the model, what past jobs taught about it (none when switched off), and what
 * intake told of recent work and of when the fault shows. Under the usual assumptions the newest answers for a
 * line are kept: looks, readings and panels, which come one a click, do not change it.
 * @example
 * jobHazard(sample.map, sample.line, sample.job, null).cellEdgesMm.length // => 151
 */
export function jobHazard(
  map: MapDocument,
  line: CircuitLine,
  job: Pick<Job, 'recentWork' | 'symptoms'>,
  history: History | null,
  assumptions: ChafeAssumptions = defaultAssumptions,
): HazardField {
  const work = () => raisedPlaces(map, line, hazardAlong(map, line, withHistory(assumptions, history)), job);
  if (assumptions !== defaultAssumptions) return work();
  const told = JSON.stringify([job.recentWork, job.symptoms]);
  const before = (kept.get(line) ?? []).filter((each) => each.map === map);
  const same = before.find((each) => each.told === told && each.history === history);
  const newest = same ?? { map, told, history, field: work() };
  kept.set(line, [newest, ...before.filter((each) => each !== same)].slice(0, mostKept));
  return newest.field;
}
