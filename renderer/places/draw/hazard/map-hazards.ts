import { createHazardCache, type HazardCache } from '#core/chafe/hazard-cache.ts';
import { type SegmentHazard, wholeHazard } from '#core/chafe/segment-hazard.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { SegmentId } from '#core/quantity/id.ts';

type Hazards = ReadonlyMap<SegmentId, SegmentHazard>;

let kept: { readonly mapId: string; readonly cache: HazardCache } | null = null;

/** The hazard of every run of the open map; after an edit only what it touched is worked out again. */
export function mapHazards(map: MapDocument): Hazards {
  if (kept?.mapId !== map.id) kept = { mapId: map.id, cache: createHazardCache() };
  return kept.cache.hazards(map);
}

const wholes = new WeakMap<Hazards, number>();

/** All runs' hazard together. */
export function hazardOfMap(hazards: Hazards): number {
  let whole = wholes.get(hazards);
  if (whole === undefined) {
    whole = 0;
    for (const hazard of hazards.values()) whole += wholeHazard(hazard);
    wholes.set(hazards, whole);
  }
  return whole;
}
