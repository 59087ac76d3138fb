import { runShape } from '../chafe/run-shape.ts';
import { spotsBeside } from '../chafe/spots-beside.ts';
import type { BodyPoint } from '../geometry/place.ts';
import { pointAtStation } from '../geometry/station-line.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { RubSpot } from '../map/records.ts';
import type { EntryId, RubSpotId, SegmentId } from '../quantity/id.ts';
import type { Job } from './job-document.ts';
import { standingEntries } from './standing-entries.ts';

/** A find where no spot is drawn: the map should have one there. */
export interface RubSpotProposal {
  readonly entryId: EntryId;
  readonly segmentId: SegmentId;
  readonly stationMm: number;
  readonly at: BodyPoint;
}

/** A drawn spot within this much of the found stretch is taken to be what was found. */
const sameSpotMm = 50;

/**
 * Spots to draw for the finds of a job that lie where none is drawn, in the order of the entries; at the middle
 * of each found stretch. Finds taken back propose nothing.
 * @example
 * proposedRubSpots(sample.map, sample.job) // => []
 */
export function proposedRubSpots(map: MapDocument, job: Job): RubSpotProposal[] {
  const proposals: RubSpotProposal[] = [];
  for (const entry of standingEntries(job)) {
    const proved =
      (entry.type === 'inspection' && entry.result === 'found') ||
      (entry.type === 'finding' && entry.result === 'proved-cause');
    if (!proved) continue;
    for (const { segmentId, fromMm, toMm } of entry.stretches) {
      const segment = map.segments.get(segmentId);
      const shape = segment && runShape(map, segment);
      if (!segment || !shape) continue;
      const stationMm = Math.min(shape.line.lengthMm, (fromMm + toMm) / 2);
      const at = pointAtStation(shape.line, stationMm);
      const withinMm = sameSpotMm + Math.abs(toMm - fromMm) / 2;
      const drawn = spotsBeside(map, segment, stationMm, withinMm).length > 0;
      const proposed = proposals.some(
        (each) => each.segmentId === segmentId && Math.abs(each.stationMm - stationMm) <= withinMm,
      );
      if (!drawn && !proposed) proposals.push({ entryId: entry.id, segmentId, stationMm, at });
    }
  }
  return proposals;
}

/**
 * A rub spot as proposed, found once, for the user to name and to say what it is.
 * @example
 * proposedRubSpot({ entryId: 'entry:find', segmentId: 'segment:middle', stationMm: 20, at: { xMm: 520, yMm: 0, zMm: 0 } }, 'rub-spot:new').timesFound // => 1
 */
export function proposedRubSpot({ at }: RubSpotProposal, id: RubSpotId): RubSpot {
  return {
    id,
    name: '',
    kind: 'other',
    shape: 'point',
    points: [at],
    clearanceMm: 0,
    side: 'level',
    severity: 2,
    timesFound: 1,
    note: '',
  };
}
