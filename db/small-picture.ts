import type { PlanPoint } from '#core/geometry/place.ts';
import type { MapExchange } from '#core/map/exchange.ts';

/** Outline and route lines as flat x, y lists in whole millimetres, thinned for a small picture. */
export interface SmallPicture {
  readonly outlines: number[][];
  readonly routes: number[][];
}

/** More points than this cannot be told apart in a picture a thumb wide. */
const mostPointsPerLine = 60;
const mostLines = 400;

/** The small picture of a map for the list: body outlines and runs, corners only. */
export function smallPicture(map: MapExchange): SmallPicture {
  const at = new Map(map.nodes.map((node) => [node.id, node.at]));
  const routes = map.segments.flatMap((segment) => {
    const from = at.get(segment.fromNodeId);
    const to = at.get(segment.toNodeId);
    return from && to ? [flatLine([from, ...segment.bends, to])] : [];
  });
  const outlines = map.outlines.map(({ vertices, closed }) =>
    flatLine(closed ? [...vertices, ...vertices.slice(0, 1)] : vertices),
  );
  return { outlines: thinned(outlines, mostLines), routes: thinned(routes, mostLines) };
}

const flatLine = (points: readonly PlanPoint[]): number[] =>
  thinned(points, mostPointsPerLine).flatMap((point) => [Math.round(point.xMm), Math.round(point.yMm)]);

/** At most so many of a list, evenly spread, first and last kept. */
function thinned<T>(list: readonly T[], most: number): T[] {
  if (list.length <= most) return [...list];
  const step = (list.length - 1) / (most - 1);
  return Array.from({ length: most }, (_, i) => list[Math.round(i * step)] as T);
}
