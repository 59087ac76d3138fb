import type { CauseShare } from '../chafe/cause.ts';
import { causesBetween } from '../chafe/causes-between.ts';
import type { CircuitLine } from '../circuit/circuit-line.ts';
import type { History } from '../history/teach.ts';
import { usualPriorShape } from '../locate/prior.ts';
import type { StationRange } from '../locate/station-ranges.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { Job } from './job-document.ts';
import { jobHazard } from './job-hazard.ts';
import { usedHistory } from './rank.ts';

/**
 * What makes the loom likely to be worn between two stations of a job's circuit, largest share first: the same
 * as an opening of the plan gives as its reasons, for any stretch that is pointed at. The circuit's hazard is
 * worked out once; after that about O(causes x cells in the stretch).
 * @example
 * stretchCauses(sample.map, sample.line, sample.job, null, { fromMm: 700, toMm: 800 })[0].thing // => 'rub-spot:edge'
 */
export function stretchCauses(
  map: MapDocument,
  line: CircuitLine,
  job: Job,
  history: History | null,
  { fromMm, toMm }: StationRange,
): readonly CauseShare[] {
  const field = jobHazard(map, line, job, usedHistory(job, history));
  return causesBetween(field, fromMm, toMm, usualPriorShape.evenFloor);
}
