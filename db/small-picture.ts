import { flattenOutline } from '#core/geometry/outline-curve.ts';
import type { PlanPoint } from '#core/geometry/place.ts';
import { planDistanceMm } from '#core/geometry/point.ts';
import { smoothLine } from '#core/geometry/smooth-line.ts';
import type { MapExchange } from '#core/map/exchange.ts';

/** Outline and route lines as flat x, y lists in whole millimetres, thinned for a small picture. */
export interface SmallPicture {
  readonly outlines: number[][];
  readonly routes: number[][];
}

/** A picture a thumb wide shows a car at about 20 mm to the pixel; what is finer cannot be seen. */
const finestMm = 20;
const mostPointsPerLine = 60;
const mostLines = 300;

/** The small picture of a map for the list: its outlines and runs, curves included. */
export function smallPicture(map: MapExchange): SmallPicture {
  const at = new Map(map.nodes.map((node) => [node.id, node.at]));
  const routes = map.segments.flatMap((segment) => {
    const from = at.get(segment.fromNodeId);
    const to = at.get(segment.toNodeId);
    if (!from || !to) return [];
    const corners = [from, ...segment.bends, to];
    return [flatLine(segment.smooth ? smoothLine(corners) : corners)];
  });
  const outlines = map.outlines.map(({ vertices, closed }) =>
    flatLine(flattenOutline(vertices, closed, finestMm / 2)),
  );
  return { outlines: thinned(outlines, mostLines), routes: thinned(routes, mostLines) };
}

function flatLine(points: readonly PlanPoint[]): number[] {
  const seen: PlanPoint[] = [];
  for (const [i, point] of points.entries()) {
    const last = seen.at(-1);
    const isEnd = i === points.length - 1;
    if (!last || isEnd || planDistanceMm(last, point) >= finestMm) seen.push(point);
  }
  return thinned(seen, mostPointsPerLine).flatMap(({ xMm, yMm }) => [Math.round(xMm), Math.round(yMm)]);
}

/** At most so many of a list, evenly spread, first and last kept. */
function thinned<T>(list: readonly T[], most: number): T[] {
  if (list.length <= most) return [...list];
  const step = (list.length - 1) / (most - 1);
  return Array.from({ length: most }, (_, i) => list[Math.round(i * step)] as T);
}
