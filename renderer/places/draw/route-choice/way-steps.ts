import type { MapDocument } from '#core/map/map-document.ts';
import type { PathStep, Segment } from '#core/map/records.ts';
import { drawnWireMm } from '#core/map/trace-path.ts';
import type { NodeId } from '#core/quantity/id.ts';

/** One run of a circuit's way, in the direction of the circuit. */
export interface WayStep {
  readonly step: PathStep;
  readonly segment: Segment;
  readonly startNodeId: NodeId;
  readonly endNodeId: NodeId;
  readonly lengthMm: number;
}

/** The runs of a way that are on the map, in order. */
export function waySteps(map: MapDocument, path: readonly PathStep[]): readonly WayStep[] {
  return path.flatMap((step) => {
    const segment = map.segments.get(step.segmentId);
    if (!segment) return [];
    const { fromNodeId, toNodeId } = segment;
    return {
      step,
      segment,
      startNodeId: step.reversed ? toNodeId : fromNodeId,
      endNodeId: step.reversed ? fromNodeId : toNodeId,
      lengthMm: drawnWireMm(map, segment) ?? 0,
    };
  });
}

/** The same way from its other end. */
export function turnedWay(path: readonly PathStep[]): readonly PathStep[] {
  return [...path].reverse().map((step) => ({ ...step, reversed: !step.reversed }));
}

/** Runs of one way that the other does not take, in order. */
export function runsApart(way: readonly PathStep[], other: readonly PathStep[]): readonly PathStep[] {
  const taken = new Set(other.map(({ segmentId }) => segmentId));
  return way.filter(({ segmentId }) => !taken.has(segmentId));
}
