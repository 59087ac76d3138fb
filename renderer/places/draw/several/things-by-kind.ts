import type { MapDocument } from '#core/map/map-document.ts';
import type { Circuit, MapNode, Outline, Panel, RubSpot, Segment, Underlay } from '#core/map/records.ts';
import { idKind } from '#core/quantity/id.ts';
import type { SeatedClip } from './several-small.tsx';

/** Picked things of a map, sorted by kind. */
export interface ThingsByKind {
  readonly segment: readonly Segment[];
  readonly node: readonly MapNode[];
  readonly panel: readonly Panel[];
  readonly 'rub-spot': readonly RubSpot[];
  readonly circuit: readonly Circuit[];
  readonly outline: readonly Outline[];
  readonly underlay: readonly Underlay[];
  readonly clip: readonly SeatedClip[];
}

/** The records behind some ids; those that are not on the map are left out. O(ids), and O(fixings) with fixings among them. */
export function thingsByKind(map: MapDocument, ids: readonly string[]): ThingsByKind {
  const of = <K extends string, T>(kind: string, table: ReadonlyMap<K, T>): T[] =>
    ids.filter((id) => idKind(id) === kind).flatMap((id) => table.get(id as K) ?? []);
  const clipIds = new Set(ids.filter((id) => idKind(id) === 'clip'));
  const clips: SeatedClip[] = [];
  if (clipIds.size > 0) {
    for (const segment of map.segments.values()) {
      for (const clip of segment.clips) {
        if (clipIds.has(clip.id)) clips.push({ ...clip, segmentId: segment.id });
      }
    }
  }
  return {
    segment: of('segment', map.segments),
    node: of('node', map.nodes),
    panel: of('panel', map.panels),
    'rub-spot': of('rub-spot', map.rubSpots),
    circuit: of('circuit', map.circuits),
    outline: of('outline', map.outlines),
    underlay: of('underlay', map.underlays),
    clip: clips,
  };
}
