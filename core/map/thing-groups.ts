import { type Bounds, boundsOf, joinedBounds } from '../geometry/bounds.ts';
import { flattenOutline } from '../geometry/outline-curve.ts';
import type { PlanPoint } from '../geometry/place.ts';
import { idKind } from '../quantity/id.ts';
import { fail, ok, type Result } from '../quantity/result.ts';
import type { MapDocument, MapRecord } from './map-document.ts';
import { recordOf } from './map-draft.ts';
import type { MapNode, Outline, Panel, RubSpot, Segment, Underlay } from './records.ts';
import { segmentLine } from './segment-line.ts';
import { underlayCorners } from './underlay-place.ts';

/** Things that only move together: runs that share a node, with their nodes; everything else alone. */
export interface ThingGroup {
  readonly ids: readonly string[];
  readonly bounds: Bounds;
}

/**
 * The picked things as groups that move together, each with the rectangle it takes up in plan, in the
 * order of their first pick. Clips, circuits and panels without an area take up none and are left
 * out. Refuses `not-found`. O(things).
 * @example
 * thingGroups(sample.map, ['segment:middle', 'segment:rear', 'rub-spot:edge']).value.map((group) => group.ids.length) // => [5, 1]
 */
export function thingGroups(map: MapDocument, ids: readonly string[]): Result<readonly ThingGroup[]> {
  const leader = new Map<string, string>();
  const leaderOf = (id: string): string => {
    let at = id;
    for (let up = leader.get(at); up !== undefined && up !== at; up = leader.get(at)) at = up;
    return at;
  };
  for (const id of ids) {
    if (idKind(id) === 'clip') continue;
    const record = recordOf(map, id);
    if (!record) return fail({ code: 'not-found', thing: id });
    if (!leader.has(id)) leader.set(id, id);
    if (idKind(id) !== 'segment') continue;
    const { fromNodeId, toNodeId } = record as Segment;
    for (const nodeId of [fromNodeId, toNodeId]) {
      if (!leader.has(nodeId)) leader.set(nodeId, nodeId);
      leader.set(leaderOf(nodeId), leaderOf(id));
    }
  }
  const members = new Map<string, string[]>();
  for (const id of leader.keys()) {
    const first = leaderOf(id);
    const known = members.get(first);
    if (known) known.push(id);
    else members.set(first, [id]);
  }
  const groups: ThingGroup[] = [];
  for (const list of members.values()) {
    let bounds: Bounds | null = null;
    for (const id of list) {
      const record = recordOf(map, id);
      const own = record && boundsOf(planPoints(map, record));
      if (own) bounds = bounds ? joinedBounds(bounds, own) : own;
    }
    if (bounds) groups.push({ ids: list, bounds });
  }
  return ok(groups);
}

/** Where a record lies in plan. */
function planPoints(map: MapDocument, record: MapRecord): readonly PlanPoint[] {
  switch (idKind(record.id)) {
    case 'outline': {
      const outline = record as Outline;
      return flattenOutline(outline.vertices, outline.closed);
    }
    case 'underlay':
      return underlayCorners(record as Underlay);
    case 'node':
      return [(record as MapNode).at];
    case 'segment':
      return segmentLine(map, record as Segment)?.points ?? [];
    case 'panel':
      return (record as Panel).area;
    case 'rub-spot':
      return (record as RubSpot).points;
    default:
      return [];
  }
}
