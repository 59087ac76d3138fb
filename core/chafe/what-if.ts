import type { Covering } from '../map/kinds.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { RubSpot, Segment } from '../map/records.ts';
import { segmentLine } from '../map/segment-line.ts';
import type { RubSpotId, SegmentId } from '../quantity/id.ts';
import type { Problem } from '../quantity/problem.ts';
import { fail, ok, type Result } from '../quantity/result.ts';
import { type ChafeAssumptions, defaultAssumptions } from './chafe-assumptions.ts';
import { segmentHazard, wholeHazard } from './segment-hazard.ts';

/** Something a repair may add to a run: a clip, a sleeve over all of it, or a strip on an edge beside it. */
export type RunChange =
  | { readonly add: 'clip'; readonly stationMm: number }
  | { readonly add: 'sleeve'; readonly covering: Covering }
  | { readonly add: 'edge-strip'; readonly rubSpotId: RubSpotId };

/** The hazard of a run per hour before and after; only their ratio means anything. */
export interface WhatIf {
  readonly before: number;
  readonly after: number;
  /** Share of the hazard that the change takes away; negative where it adds some. */
  readonly fallsBy: number;
}

/** An edge under a strip wears as a folded trim edge does. Common practice, no source. */
const strippedKind = 'panel-edge';

/**
 * What a change to a run would do to its hazard: advice for the repair. The map stays as it is. Refuses
 * `not-found` for a run or spot that is not there or a run half drawn, and `bad-value` for a clip off the run.
 * @example
 * whatIf(sample.map, 'segment:middle', { add: 'sleeve', covering: 'braided-sleeve' }).value.fallsBy > 0.5 // => true
 */
export function whatIf(
  map: MapDocument,
  segmentId: SegmentId,
  change: RunChange,
  assumptions: ChafeAssumptions = defaultAssumptions,
): Result<WhatIf> {
  const segment = map.segments.get(segmentId);
  const now = segment && segmentHazard(map, segment, assumptions);
  if (!segment || !now) return fail({ code: 'not-found', thing: segmentId });
  const changed = changedPlace(map, segment, now.lengthMm, change);
  if (!changed.ok) return changed;
  const then = segmentHazard(changed.value.map, changed.value.segment, assumptions);
  if (!then) return fail({ code: 'not-found', thing: segmentId });
  const [before, after] = [wholeHazard(now), wholeHazard(then)];
  return ok({ before, after, fallsBy: before > 0 ? 1 - after / before : 0 });
}

/**
 * The map as it would be with a change to a run, to draw the hazard beside what it is. Refuses what `whatIf`
 * refuses.
 * @example
 * mapWithChange(sample.map, 'segment:middle', { add: 'sleeve', covering: 'braided-sleeve' }).value.segments.get('segment:middle').covering // => 'braided-sleeve'
 */
export function mapWithChange(
  map: MapDocument,
  segmentId: SegmentId,
  change: RunChange,
): Result<MapDocument> {
  const segment = map.segments.get(segmentId);
  const line = segment && segmentLine(map, segment);
  if (!segment || !line) return fail({ code: 'not-found', thing: segmentId });
  const changed = changedPlace(map, segment, line.lengthMm, change);
  return changed.ok ? ok(changed.value.map) : changed;
}

interface Place {
  readonly map: MapDocument;
  readonly segment: Segment;
}

function changedPlace(
  map: MapDocument,
  segment: Segment,
  lengthMm: number,
  change: RunChange,
): Result<Place, Problem> {
  if (change.add === 'edge-strip') {
    const spot = map.rubSpots.get(change.rubSpotId);
    if (!spot) return fail({ code: 'not-found', thing: change.rubSpotId });
    const stripped: RubSpot = { ...spot, kind: strippedKind };
    return ok({ map: { ...map, rubSpots: new Map(map.rubSpots).set(spot.id, stripped) }, segment });
  }
  if (change.add === 'clip' && (change.stationMm < 0 || change.stationMm > lengthMm)) {
    return fail({
      code: 'bad-value',
      field: 'stationMm',
      value: change.stationMm,
      allowed: `0..${lengthMm}`,
    });
  }
  const changed: Segment =
    change.add === 'sleeve'
      ? { ...segment, covering: change.covering }
      : {
          ...segment,
          clips: [
            ...segment.clips,
            { id: 'clip:what-if', stationMm: change.stationMm, kind: 'clip', missing: false },
          ],
        };
  return ok({ map: { ...map, segments: new Map(map.segments).set(segment.id, changed) }, segment: changed });
}
