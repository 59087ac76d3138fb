import { parallelLine } from '../../geometry/parallel-line.ts';
import type { BodyPoint } from '../../geometry/place.ts';
import { bodyDistanceMm } from '../../geometry/point.ts';
import { pieceAt, pointAtStation } from '../../geometry/station-line.ts';
import type { Chance } from '../../quantity/chance.ts';
import type { NodeId, SegmentId } from '../../quantity/id.ts';
import { fail, type Result } from '../../quantity/result.ts';
import { samePlaceMm } from '../../quantity/tolerance.ts';
import { findRecord } from '../find-record.ts';
import type { MapDocument } from '../map-document.ts';
import type { Patch } from '../patch.ts';
import { segmentLine } from '../segment-line.ts';
import { stationOnRun } from '../station-on-run.ts';
import { drawRoute, type RoutePoint, type RunDefaults } from './draw-route.ts';

/** What an end of the new run takes hold of, when it should not look for a node by itself. */
export type EndSnap = RoutePoint['snap'] | 'free';

/** Without a wish, an end takes hold of a node this near in the car: a finger's width. */
const usualSnapMm = 25;

/**
 * Draws a run beside an existing one, between two of its stations, at a constant distance in plan and at
 * the same heights: a positive offset lies to the right of the run walked from its first node, seen from
 * above. Each end takes hold of what is wished, else of the nearest node within `snapMm`, else it is a loose
 * end. The new run has the old one's covering, but no clips, tags or measured length: those are its own.
 * Refuses `not-found`, `beyond-end`, `zero-length`, a stretch or offset too small to see (`bad-value`), and
 * what `drawRoute` refuses. O(nodes + points squared).
 * @example
 * parallelRun(sample.map, { segmentId: 'segment:front', offsetMm: -40, fromMm: 100, toMm: 400 }, seededChance(1)).value.added.filter((each) => each.at).map((node) => node.at.yMm) // => [40, 40]
 */
export function parallelRun(
  map: MapDocument,
  input: {
    readonly segmentId: SegmentId;
    readonly offsetMm: number;
    readonly fromMm?: number;
    readonly toMm?: number;
    readonly routeName?: string;
    readonly snapMm?: number;
    readonly ends?: readonly [EndSnap | undefined, EndSnap | undefined];
    readonly run?: Partial<RunDefaults>;
  },
  chance: Chance,
): Result<Patch> {
  const found = findRecord(map.segments, input.segmentId);
  if (!found.ok) return found;
  const segment = found.value;
  const line = segmentLine(map, segment);
  if (!line) return fail({ code: 'zero-length', thing: segment.id });
  const { offsetMm } = input;
  if (!(Math.abs(offsetMm) >= samePlaceMm)) {
    return fail({ code: 'bad-value', field: 'offsetMm', value: offsetMm, allowed: `>= ${samePlaceMm}` });
  }
  const from = stationOnRun(map, segment, input.fromMm ?? 0, 'fromMm');
  if (!from.ok) return from;
  const to = stationOnRun(map, segment, input.toMm ?? line.lengthMm, 'toMm');
  if (!to.ok) return to;
  if (to.value - from.value < samePlaceMm) {
    return fail({ code: 'bad-value', field: 'toMm', value: to.value, allowed: `> ${from.value}` });
  }
  const whole = from.value < samePlaceMm && to.value > line.lengthMm - samePlaceMm;
  // Part of a rounded run can only be followed chord by chord; a whole one keeps its own bends.
  const smooth = segment.smooth && whole;
  const ends = [line.points[0] as BodyPoint, line.points.at(-1) as BodyPoint] as const;
  const stretch = smooth
    ? [ends[0], ...segment.bends, ends[1]]
    : [
        pointAtStation(line, from.value),
        ...line.points.slice(pieceAt(line, from.value).piece + 1, pieceAt(line, to.value).piece + 1),
        pointAtStation(line, to.value),
      ];
  const beside = parallelLine(withoutDoubles(stretch), offsetMm);
  const last = beside.length - 1;
  const snapMm = input.snapMm ?? usualSnapMm;
  const first = endSnap(map, beside[0] as BodyPoint, input.ends?.[0], snapMm, null);
  const held = first && 'nodeId' in first ? first.nodeId : null;
  const second = endSnap(map, beside[last] as BodyPoint, input.ends?.[1], snapMm, held);
  const points = beside.map((at, i): RoutePoint => {
    const snap = i === 0 ? first : i === last ? second : null;
    return snap ? { at, snap } : { at };
  });
  return drawRoute(
    map,
    {
      routeName: input.routeName ?? segment.routeName,
      points,
      run: { covering: segment.covering, traits: segment.traits, ...input.run, smooth },
    },
    chance,
  );
}

function withoutDoubles(points: readonly BodyPoint[]): readonly BodyPoint[] {
  return points.filter((at, i) => i === 0 || bodyDistanceMm(points[i - 1] as BodyPoint, at) >= 1e-6);
}

/** What an end takes hold of; never the node the other end has, which would be a run to itself. */
function endSnap(
  map: MapDocument,
  at: BodyPoint,
  wish: EndSnap | undefined,
  snapMm: number,
  heldNodeId: NodeId | null,
): NonNullable<RoutePoint['snap']> | null {
  if (wish === 'free') return null;
  if (wish) return wish;
  let nearest: NodeId | null = null;
  let nearestMm = snapMm;
  for (const node of map.nodes.values()) {
    const mm = bodyDistanceMm(at, node.at);
    if (mm > nearestMm || node.id === heldNodeId) continue;
    nearestMm = mm;
    nearest = node.id;
  }
  return nearest ? { nodeId: nearest } : null;
}
