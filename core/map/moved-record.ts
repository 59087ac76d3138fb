import type { BodyPoint, PlanPoint } from '../geometry/place.ts';
import { idKind } from '../quantity/id.ts';
import type { MapRecord } from './map-document.ts';
import type { MapNode, Outline, Panel, RubSpot, Segment, Underlay, Vertex } from './records.ts';

/** How places change: points by one rule, an outline's corners by the same with their handles. */
export interface PlaceRule {
  readonly point: <P extends PlanPoint | BodyPoint>(point: P) => P;
  readonly vertex: (vertex: Vertex) => Vertex;
}

/**
 * The rule that moves everything by one distance in plan.
 * @example
 * movedBy(10, -5).point({ xMm: 1, yMm: 2 }) // => { xMm: 11, yMm: -3 }
 */
export function movedBy(dxMm: number, dyMm: number): PlaceRule {
  const point = <P extends PlanPoint>(at: P): P => ({ ...at, xMm: at.xMm + dxMm, yMm: at.yMm + dyMm });
  return { point, vertex: point };
}

/**
 * A record with its own places put through a rule: corners, areas, bends, a node's or picture's place. A
 * run's ends are its nodes' business, and a circuit has no place of its own. A picture's turn and scale stay.
 * @example
 * movedRecord(sample.rubSpot, movedBy(100, 0)).points[0].xMm - sample.rubSpot.points[0].xMm // => 100
 */
export function movedRecord<T extends MapRecord>(record: T, rule: PlaceRule): T {
  return moved(record, rule) as T;
}

function moved(record: MapRecord, { point, vertex }: PlaceRule): MapRecord {
  switch (idKind(record.id)) {
    case 'outline': {
      const outline = record as Outline;
      return { ...outline, vertices: outline.vertices.map(vertex) };
    }
    case 'underlay': {
      const underlay = record as Underlay;
      return { ...underlay, origin: point(underlay.origin) };
    }
    case 'node': {
      const node = record as MapNode;
      return { ...node, at: point(node.at) };
    }
    case 'segment': {
      const segment = record as Segment;
      return segment.bends.length > 0 ? { ...segment, bends: segment.bends.map(point) } : segment;
    }
    case 'panel': {
      const panel = record as Panel;
      return { ...panel, area: panel.area.map(point) };
    }
    case 'rub-spot': {
      const spot = record as RubSpot;
      return { ...spot, points: spot.points.map(point) };
    }
    default:
      return record;
  }
}
