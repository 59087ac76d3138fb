import { type ChafeAssumptions, defaultAssumptions } from '../chafe/chafe-assumptions.ts';
import { hazardAlong } from '../chafe/hazard-along.ts';
import type { HazardField } from '../chafe/hazard-field.ts';
import type { CircuitLine } from '../circuit/circuit-line.ts';
import { raisedPlaces } from '../history/raised-places.ts';
import { type History, withHistory } from '../history/teach.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { Job } from './job-document.ts';

/**
 * The hazard of a job's circuit: the model, what past jobs taught about it (none when switched off), and what
 * intake told of recent work and of when the fault shows.
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
  return raisedPlaces(map, line, hazardAlong(map, line, withHistory(assumptions, history)), job);
}
