import { type ChafeAssumptions, defaultAssumptions } from '../chafe/chafe-assumptions.ts';
import { hazardAlong } from '../chafe/hazard-along.ts';
import type { HazardField } from '../chafe/hazard-field.ts';
import type { CircuitLine } from '../circuit/circuit-line.ts';
import { raisedPlaces } from '../history/raised-places.ts';
import { type History, withHistory } from '../history/teach.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { Job } from './job-document.ts';

/** The newest answer for each line, with what it was asked for. */
interface Kept {
  readonly map: MapDocument;
  readonly told: string;
  readonly history: History | null;
  readonly field: HazardField;
}
const kept = new WeakMap<CircuitLine, Kept>();

/**
 * The hazard of a job's circuit: the model, what past jobs taught about it (none when switched off), and what
 * intake told of recent work and of when the fault shows. Under the usual assumptions the newest answer for a
 * line is kept: looks, readings and panels, which come one a click, do not change it.
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
  const before = kept.get(line);
  if (before?.map === map && before.told === told && before.history === history) return before.field;
  const field = work();
  kept.set(line, { map, told, history, field });
  return field;
}
