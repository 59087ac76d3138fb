import type { RubSpotId } from '../../quantity/id.ts';
import { fail, type Result } from '../../quantity/result.ts';
import { findRecord } from '../find-record.ts';
import type { MapDocument } from '../map-document.ts';
import { draftOf } from '../map-draft.ts';
import type { Patch } from '../patch.ts';
import type { RubSpot } from '../records.ts';
import { rubSpotShapeProblem } from './add-rub-spot.ts';

/**
 * Changes anything about a rub spot, its points included. Refuses `not-found`, `too-few-points` and
 * `bad-field`.
 * @example
 * changeRubSpot(sample.map, { rubSpotId: 'rub-spot:edge', changes: { severity: 3 } }).value.changed[0][1].severity // => 3
 */
export function changeRubSpot(
  map: MapDocument,
  input: { readonly rubSpotId: RubSpotId; readonly changes: Partial<Omit<RubSpot, 'id'>> },
): Result<Patch> {
  const found = findRecord(map.rubSpots, input.rubSpotId);
  if (!found.ok) return found;
  const spot = { ...found.value, ...input.changes };
  const problem = rubSpotShapeProblem(spot);
  if (problem) return fail(problem);
  const draft = draftOf(map);
  draft.put(spot);
  return draft.finish();
}
