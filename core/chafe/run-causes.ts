import type { MapDocument } from '../map/map-document.ts';
import { compareText } from '../quantity/compare-text.ts';
import type { RubSpotId, SegmentId } from '../quantity/id.ts';
import type { CauseShare } from './cause.ts';
import type { MechanismHazard } from './mechanism-hazard.ts';
import { type SegmentHazard, wholeHazard } from './segment-hazard.ts';

/** A cause that makes less than this of a stretch's hazard is not worth a word. */
const leastShare = 1e-3;

/**
 * Hazard of one cause between two stations of its run, per hour, as drawn: before it is spread by the doubt
 * of where the place is.
 * @example
 * causeMass({ cellMm: 10 }, { firstCell: 1, perMm: [2, 4] }, 15, 25) // => 30
 */
export function causeMass(
  { cellMm }: Pick<SegmentHazard, 'cellMm'>,
  { firstCell, perMm }: Pick<MechanismHazard, 'firstCell' | 'perMm'>,
  fromMm: number,
  toMm: number,
): number {
  let mass = 0;
  for (let i = 0; i < perMm.length; i++) {
    const startMm = (firstCell + i) * cellMm;
    const lengthMm = Math.min(toMm, startMm + cellMm) - Math.max(fromMm, startMm);
    if (lengthMm > 0) mass += lengthMm * (perMm[i] as number);
  }
  return mass;
}

/**
 * Each cause's share of the hazard between two stations of one run, whoever's circuit it carries; largest
 * first, ties by name, the same cause on the same thing as one entry with the figures of its larger part.
 * Shares sum to one but for what is too small to list. O(cells of the run's causes).
 * @example
 * runCauses(segmentHazard(sample.map, sample.middle), 200, 300)[0].thing // => 'rub-spot:edge'
 */
export function runCauses(hazard: SegmentHazard, fromMm: number, toMm: number): readonly CauseShare[] {
  const merged = new Map<string, { largest: MechanismHazard; largestMass: number; mass: number }>();
  let total = 0;
  for (const cause of hazard.causes) {
    const mass = causeMass(hazard, cause, fromMm, toMm);
    if (mass <= 0) continue;
    total += mass;
    const key = `${cause.cause} ${cause.thing}`;
    const held = merged.get(key);
    if (!held) merged.set(key, { largest: cause, largestMass: mass, mass });
    else {
      held.mass += mass;
      if (mass > held.largestMass) {
        held.largest = cause;
        held.largestMass = mass;
      }
    }
  }
  return [...merged.values()]
    .map(({ largest: { cause, thing, figures }, mass }) => ({ cause, thing, share: mass / total, figures }))
    .filter(({ share }) => share >= leastShare)
    .sort((a, b) => b.share - a.share || compareText(`${a.cause} ${a.thing}`, `${b.cause} ${b.thing}`));
}

/** How much of a map's hazard one rub spot adds, and on which runs. */
export interface SpotPart {
  /** Share (0 to 1) of the whole map's hazard. */
  readonly ofMap: number;
  /** Runs it adds to, most first: the share of the run's own hazard, and what it adds per hour. */
  readonly runs: readonly { readonly segmentId: SegmentId; readonly ofRun: number; readonly mass: number }[];
}

const knownParts = new WeakMap<ReadonlyMap<SegmentId, SegmentHazard>, ReadonlyMap<RubSpotId, SpotPart>>();

/**
 * What every rub spot adds to the hazard of a map whose runs' hazards are known; a spot out of everything's
 * reach has no entry. Worked out once for a set of hazards. O(cells of all causes).
 * @example
 * spotParts(sample.map, new Map([['segment:middle', segmentHazard(sample.map, sample.middle)]])).get('rub-spot:edge').ofMap > 0.5 // => true
 */
export function spotParts(
  map: Pick<MapDocument, 'rubSpots'>,
  hazards: ReadonlyMap<SegmentId, SegmentHazard>,
): ReadonlyMap<RubSpotId, SpotPart> {
  const known = knownParts.get(hazards);
  if (known) return known;
  const bySpot = new Map<RubSpotId, Map<SegmentId, number>>();
  const ofRuns = new Map<SegmentId, number>();
  let whole = 0;
  for (const [segmentId, hazard] of hazards) {
    const ofRun = wholeHazard(hazard);
    ofRuns.set(segmentId, ofRun);
    whole += ofRun;
    for (const cause of hazard.causes) {
      const spotId = cause.thing as RubSpotId | null;
      if (spotId === null || !map.rubSpots.has(spotId)) continue;
      const mass = causeMass(hazard, cause, 0, hazard.lengthMm);
      if (mass <= 0) continue;
      const runs = bySpot.get(spotId) ?? new Map<SegmentId, number>();
      runs.set(segmentId, (runs.get(segmentId) ?? 0) + mass);
      bySpot.set(spotId, runs);
    }
  }
  const parts = new Map<RubSpotId, SpotPart>();
  for (const [spotId, masses] of bySpot) {
    let sum = 0;
    const runs = [...masses].map(([segmentId, mass]) => {
      sum += mass;
      return { segmentId, mass, ofRun: mass / (ofRuns.get(segmentId) as number) };
    });
    runs.sort((a, b) => b.mass - a.mass || compareText(a.segmentId, b.segmentId));
    parts.set(spotId, { ofMap: sum / whole, runs });
  }
  knownParts.set(hazards, parts);
  return parts;
}
