import type { MapDocument } from '../map/map-document.ts';
import type { Circuit, MapNode, Segment } from '../map/records.ts';
import { circuitsThrough } from './bundle-through.ts';
import type { ChafeAssumptions } from './chafe-assumptions.ts';
import { type Hold, holdsBeyond } from './holding.ts';
import { type NearSpot, nearestRunsMm, nearSpots } from './near-spots.ts';
import { type Protection, strongerCover } from './protection.ts';
import { type RunShape, runShape } from './run-shape.ts';
import { runsAtNode } from './runs-at-node.ts';

/** Everything outside a run's own record that its hazard depends on. Equal surroundings, equal hazard. */
export interface RunSurroundings {
  readonly shape: RunShape;
  readonly circuits: readonly Circuit[];
  readonly near: readonly NearSpot[];
  /** For each near spot with a given gap, the distance to it of the run it is nearest to: the gap is that run's. */
  readonly nearestMm: readonly number[];
  /** The next two holds past each end; none at a free end. */
  readonly beyondFrom: readonly Hold[];
  readonly beyondTo: readonly Hold[];
  /** What covers the loom past each end. */
  readonly coverFrom: Protection;
  readonly coverTo: Protection;
}

/**
 * Gathers a run's surroundings; null for one half drawn.
 * @example
 * runSurroundings(sample.map, sample.middle, defaultAssumptions).beyondTo // => [{ atMm: 500, solid: true }]
 */
export function runSurroundings(
  map: MapDocument,
  segment: Segment,
  assumptions: ChafeAssumptions,
): RunSurroundings | null {
  const shape = runShape(map, segment);
  if (!shape) return null;
  const near = nearSpots(map, segment, assumptions.reachMm);
  return {
    shape,
    circuits: circuitsThrough(map, segment.id),
    near,
    nearestMm: nearestRunsMm(map, near, assumptions.reachMm),
    beyondFrom: holdsBeyond(map, segment, segment.fromNodeId),
    beyondTo: holdsBeyond(map, segment, segment.toNodeId),
    coverFrom: coverPast(map, segment, shape.from, assumptions),
    coverTo: coverPast(map, segment, shape.to, assumptions),
  };
}

const coverGoesOn: ReadonlySet<MapNode['kind']> = new Set(['branch', 'splice', 'grommet', 'loose-end']);

/** The best covering of the runs past a node; bare where a covering must stop. */
function coverPast(
  map: MapDocument,
  segment: Segment,
  node: MapNode,
  { protection }: ChafeAssumptions,
): Protection {
  let best = protection.bare;
  if (!coverGoesOn.has(node.kind)) return best;
  for (const next of runsAtNode(map, node.id)) {
    if (next.id !== segment.id) best = strongerCover(best, protection[next.covering]);
  }
  return best;
}

/**
 * Whether two gatherings of surroundings lead to the same hazard.
 * @example
 * sameSurroundings(runSurroundings(sample.map, sample.middle, defaultAssumptions), runSurroundings(sample.map, sample.middle, defaultAssumptions)) // => true
 */
export function sameSurroundings(a: RunSurroundings, b: RunSurroundings): boolean {
  return (
    a.shape === b.shape &&
    a.near === b.near &&
    sameHolds(a.beyondFrom, b.beyondFrom) &&
    sameHolds(a.beyondTo, b.beyondTo) &&
    a.coverFrom === b.coverFrom &&
    a.coverTo === b.coverTo &&
    sameItems(a.nearestMm, b.nearestMm) &&
    sameItems(a.circuits, b.circuits)
  );
}

const sameItems = (a: readonly unknown[], b: readonly unknown[]) =>
  a === b || (a.length === b.length && a.every((each, i) => each === b[i]));

const sameHolds = (a: readonly Hold[], b: readonly Hold[]) =>
  a.length === b.length && a.every(({ atMm, solid }, i) => atMm === b[i]?.atMm && solid === b[i]?.solid);
