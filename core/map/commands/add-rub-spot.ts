import { fail, type Result } from '../../quantity/result.ts';
import { addRecord } from '../add-record.ts';
import type { MapDocument } from '../map-document.ts';
import type { Patch } from '../patch.ts';
import type { RubSpot } from '../records.ts';

const pointsNeeded = { point: 1, line: 2, area: 3 } as const;

/**
 * How many points a rub spot's shape lacks, as a problem; null when its points make the shape.
 * @example
 * rubSpotShapeProblem({ ...sample.rubSpot, shape: 'line' }) // => { code: 'too-few-points', needed: 2, found: 1 }
 */
export function rubSpotShapeProblem(spot: RubSpot) {
  const needed = pointsNeeded[spot.shape];
  const found = spot.points.length;
  return found < needed ? ({ code: 'too-few-points', needed, found } as const) : null;
}

/**
 * Adds a rub spot: a point, a line of two or more points or an area of three or more. Refuses
 * `duplicate-id`, `too-few-points` and `bad-field`.
 * @example
 * addRubSpot(sample.map, { rubSpot: { ...sample.rubSpot, id: 'rub-spot:new' } }).value.added.length // => 1
 */
export function addRubSpot(map: MapDocument, input: { readonly rubSpot: RubSpot }): Result<Patch> {
  const problem = rubSpotShapeProblem(input.rubSpot);
  return problem ? fail(problem) : addRecord(map, input.rubSpot);
}
