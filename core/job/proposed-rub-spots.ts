import { runShape } from '../chafe/run-shape.ts';
import { spotsBeside } from '../chafe/spots-beside.ts';
import type { BodyPoint } from '../geometry/place.ts';
import { pointAtStation } from '../geometry/station-line.ts';
import { isLookOnly } from '../map/kinds.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { RubSpot } from '../map/records.ts';
import type { EntryId, RubSpotId, SegmentId } from '../quantity/id.ts';
import type { Job } from './job-document.ts';
import { provedFinds } from './proved-find.ts';
import type { Stretch } from './reading.ts';
import { standingEntries } from './standing-entries.ts';

/** Where something was found and no spot is drawn: the map should have one there. */
export interface UndrawnFind {
  readonly segmentId: SegmentId;
  readonly stationMm: number;
  readonly at: BodyPoint;
}

export interface RubSpotProposal extends UndrawnFind {
  readonly entryId: EntryId;
}

/** A drawn spot within this much of the found stretch is taken to be what was found. */
const sameSpotMm = 50;

/**
 * Spots to draw for the proved finds of a job that lie where none is drawn, in the order of the entries; at the middle
 * of each found stretch. Finds taken back propose nothing. The map may be a later one than the job's own.
 * @example
 * proposedRubSpots(sample.map, sample.job) // => []
 */
export function proposedRubSpots(map: MapDocument, job: Job): RubSpotProposal[] {
  const circuit = job.circuitId === null ? undefined : map.circuits.get(job.circuitId);
  const finds = provedFinds(standingEntries(job), isLookOnly(circuit?.duty)).flatMap((entry) => {
    // What is in a plug did not rub, so no spot belongs there.
    return entry.partNodeId ? [] : entry.stretches.map((stretch) => ({ ...stretch, entryId: entry.id }));
  });
  return undrawn(map, finds).map(({ find, ...place }) => ({ ...place, entryId: find.entryId }));
}

/**
 * The same for stretches where something was found in whatever job.
 * @example
 * undrawnFinds(sample.map, [{ segmentId: 'segment:rear', fromMm: 100, toMm: 200 }])[0].stationMm // => 150
 */
export function undrawnFinds(map: MapDocument, stretches: readonly Stretch[]): UndrawnFind[] {
  return undrawn(map, stretches).map(({ find: _, ...place }) => place);
}

function undrawn<F extends Stretch>(
  map: MapDocument,
  finds: readonly F[],
): (UndrawnFind & { readonly find: F })[] {
  const proposals: (UndrawnFind & { readonly find: F })[] = [];
  for (const find of finds) {
    const { segmentId, fromMm, toMm } = find;
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
    if (!drawn && !proposed) proposals.push({ find, segmentId, stationMm, at });
  }
  return proposals;
}

/**
 * A rub spot as proposed, found once, for the user to name and to say what it is.
 * @example
 * proposedRubSpot({ segmentId: 'segment:middle', stationMm: 20, at: { xMm: 520, yMm: 0, zMm: 0 } }, 'rub-spot:new').timesFound // => 1
 */
export function proposedRubSpot({ at }: UndrawnFind, id: RubSpotId): RubSpot {
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
