import type { PlanPoint } from '#core/geometry/place.ts';
import { polygonContains } from '#core/geometry/polygon.ts';
import { pointAtStation } from '#core/geometry/station-line.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { ClipId, SegmentId } from '#core/quantity/id.ts';
import { idKind } from '#core/quantity/id.ts';
import { type BoardIndex, idsInBox } from './board-index.ts';
import { nearestOnLine } from './nearest-on-line.ts';
import { outlineLine } from './outline-line.ts';
import { runLine } from './run-line.ts';

/** What lies under the pointer, and where on it. */
export type Hit = { readonly at: PlanPoint; readonly distanceMm: number } & (
  | { readonly kind: 'node' | 'rub-spot' | 'panel' | 'outline'; readonly id: string }
  | { readonly kind: 'segment'; readonly id: SegmentId; readonly stationMm: number }
  | { readonly kind: 'clip'; readonly id: ClipId; readonly segmentId: SegmentId; readonly stationMm: number }
);
export type HitKind = Hit['kind'];

/** What wins when several things lie under the pointer: the smallest to aim at comes first. */
const precedence: readonly HitKind[] = ['node', 'clip', 'rub-spot', 'segment', 'outline', 'panel'];

/** All within reach of a point, best first. `reachMm` is how far off the pointer may be. */
export function hitsAt(index: BoardIndex, at: PlanPoint, reachMm: number): readonly Hit[] {
  const box = {
    minXMm: at.xMm - reachMm,
    maxXMm: at.xMm + reachMm,
    minYMm: at.yMm - reachMm,
    maxYMm: at.yMm + reachMm,
  };
  const hits: Hit[] = [];
  for (const id of idsInBox(index, box)) hits.push(...hitsOn(index.map, id, at, reachMm));
  return hits.sort(
    (a, b) =>
      precedence.indexOf(a.kind) - precedence.indexOf(b.kind) ||
      a.distanceMm - b.distanceMm ||
      (a.id < b.id ? -1 : 1),
  );
}

function hitsOn(map: MapDocument, id: string, at: PlanPoint, reachMm: number): Hit[] {
  switch (idKind(id)) {
    case 'node': {
      const node = map.nodes.get(id as `node:${string}`);
      return node ? within({ kind: 'node', id, ...fromPoint(node.at, at) }, reachMm) : [];
    }
    case 'segment':
      return hitsOnRun(map, id as SegmentId, at, reachMm);
    case 'rub-spot': {
      const spot = map.rubSpots.get(id as `rub-spot:${string}`);
      if (!spot) return [];
      if (spot.shape === 'area' && polygonContains(spot.points, at))
        return [{ kind: 'rub-spot', id, at, distanceMm: 0 }];
      const near =
        spot.points.length < 2
          ? fromPoint(spot.points[0] as PlanPoint, at)
          : nearestOnLine(
              spot.shape === 'area' ? [...spot.points, spot.points[0] as PlanPoint] : spot.points,
              at,
            );
      return within({ kind: 'rub-spot', id, at: near.at, distanceMm: near.distanceMm }, reachMm);
    }
    case 'outline': {
      const outline = map.outlines.get(id as `outline:${string}`);
      if (!outline) return [];
      const near = nearestOnLine(outlineLine(outline), at);
      return within({ kind: 'outline', id, at: near.at, distanceMm: near.distanceMm }, reachMm);
    }
    case 'panel': {
      const panel = map.panels.get(id as `panel:${string}`);
      return panel && polygonContains(panel.area, at) ? [{ kind: 'panel', id, at, distanceMm: 0 }] : [];
    }
    default:
      return [];
  }
}

function hitsOnRun(map: MapDocument, id: SegmentId, at: PlanPoint, reachMm: number): Hit[] {
  const segment = map.segments.get(id);
  const line = segment && runLine(map, segment);
  if (!segment || !line) return [];
  const near = nearestOnLine(line.points, at);
  const start = line.stationsMm[near.piece] as number;
  const stationMm = start + ((line.stationsMm[near.piece + 1] as number) - start) * near.share;
  const hits = within({ kind: 'segment', id, stationMm, at: near.at, distanceMm: near.distanceMm }, reachMm);
  for (const clip of segment.clips) {
    const place = fromPoint(pointAtStation(line, clip.stationMm), at);
    hits.push(
      ...within(
        { kind: 'clip', id: clip.id, segmentId: id, stationMm: clip.stationMm, ...place },
        reachMm * 0.6,
      ),
    );
  }
  return hits;
}

const fromPoint = (place: PlanPoint, at: PlanPoint) => ({
  at: { xMm: place.xMm, yMm: place.yMm },
  distanceMm: Math.hypot(place.xMm - at.xMm, place.yMm - at.yMm),
});

const within = (hit: Hit, reachMm: number): Hit[] => (hit.distanceMm <= reachMm ? [hit] : []);
