import type { MapDocument } from '../map/map-document.ts';
import type { Segment } from '../map/records.ts';
import type { SegmentId } from '../quantity/id.ts';
import { type ChafeAssumptions, defaultAssumptions } from './chafe-assumptions.ts';
import { type RunSurroundings, runSurroundings, sameSurroundings } from './run-surroundings.ts';
import { hazardAmid, type SegmentHazard } from './segment-hazard.ts';
import { touchedRuns } from './touched-runs.ts';

/** Remembers the hazard of every run of a map from one edit to the next. */
export interface HazardCache {
  /** Hazard of every shaped run; runs that an edit cannot have touched come back as the same object. */
  readonly hazards: (map: MapDocument) => ReadonlyMap<SegmentId, SegmentHazard>;
  /** Runs worked out anew by the last call. */
  readonly recomputed: () => number;
}

interface Remembered {
  readonly segment: Segment;
  readonly around: RunSurroundings;
}

/**
 * A memory for one map under one set of assumptions. A call costs O(runs) comparisons plus the hazard of
 * what changed.
 * @example
 * createHazardCache().hazards(sample.map).size // => 3
 */
export function createHazardCache(assumptions: ChafeAssumptions = defaultAssumptions): HazardCache {
  let before: MapDocument | null = null;
  let answer: ReadonlyMap<SegmentId, SegmentHazard> = new Map();
  const remembered = new Map<SegmentId, Remembered>();
  let recomputed = 0;
  const renew = (map: MapDocument, id: SegmentId, into: Map<SegmentId, SegmentHazard>): void => {
    const segment = map.segments.get(id);
    const around = segment && runSurroundings(map, segment, assumptions);
    if (!segment || !around) {
      remembered.delete(id);
      into.delete(id);
      return;
    }
    const held = remembered.get(id);
    if (held && held.segment === segment && sameSurroundings(held.around, around)) return;
    const hazard = hazardAmid(segment, around, assumptions);
    remembered.set(id, { segment, around });
    into.set(id, hazard);
    recomputed++;
  };
  const hazards = (map: MapDocument) => {
    recomputed = 0;
    if (map === before) return answer;
    const next = new Map(answer);
    const ids = before ? touchedRuns(before, map, assumptions.reachMm) : map.segments.keys();
    for (const id of ids) renew(map, id, next);
    before = map;
    answer = next;
    return answer;
  };
  return { hazards, recomputed: () => recomputed };
}
