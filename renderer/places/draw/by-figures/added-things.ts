import type { BodyPoint } from '#core/geometry/place.ts';
import { addClip } from '#core/map/commands/add-clip.ts';
import { addNode } from '#core/map/commands/add-node.ts';
import { addOutline } from '#core/map/commands/add-outline.ts';
import { addPanel } from '#core/map/commands/add-panel.ts';
import { addRubSpot } from '#core/map/commands/add-rub-spot.ts';
import { changeNode } from '#core/map/commands/change-node.ts';
import { drawRoute, type RoutePoint } from '#core/map/commands/draw-route.ts';
import { splitSegment } from '#core/map/commands/split-segment.ts';
import type { ClipKind, NodeKind, OutlineKind, PanelKind, RubSpotKind } from '#core/map/kinds.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Patch } from '#core/map/patch.ts';
import type { RubSpot } from '#core/map/records.ts';
import type { Chance } from '#core/quantity/chance.ts';
import { type NodeId, newId, type SegmentId } from '#core/quantity/id.ts';
import type { Result } from '#core/quantity/result.ts';
import { drawWords } from '../../../language/draw.ts';
import {
  nodeKindWords,
  outlineKindWords,
  panelKindWords,
  rubSpotKindWords,
} from '../../../language/words.ts';
import { inTurn } from '../../../session/in-turn.ts';
import { freeName, nextOrder } from '../../../tools/free-name.ts';
import { routeNames } from '../../../tools/route/route-names.ts';

/** A thing about to be on the map: the edit that adds it, and what it will be known by. */
export interface Added {
  readonly patch: Result<Patch>;
  readonly id: string;
  readonly name: string;
}

const named = (typed: string, base: string, taken: Iterable<{ readonly name: string }>): string =>
  typed.trim() === '' ? freeName(base, taken) : typed.trim();

/** A plug or part by itself, or set into a run at a station. */
export function addedNode(
  map: MapDocument,
  input: {
    readonly kind: NodeKind;
    readonly name: string;
    readonly at: BodyPoint | { readonly segmentId: SegmentId; readonly stationMm: number };
  },
  chance: Chance,
): Added {
  const id = newId('node', chance);
  const name = named(input.name, nodeKindWords[input.kind], map.nodes.values());
  const { kind, at } = input;
  if (!('segmentId' in at)) {
    return { id, name, patch: addNode(map, { node: { id, name, kind, at, panelIds: [], note: '' } }) };
  }
  const ids = { nodeId: id, segmentId: newId('segment', chance) };
  const patch = inTurn(
    map,
    (now) => splitSegment(now, { segmentId: at.segmentId, stationMm: at.stationMm, ids }),
    (now) => changeNode(now, { nodeId: id, changes: { kind, name } }),
  );
  return { id, name, patch };
}

/** A run from end to end through bends; an end is a node that is there or a place for a new loose end. */
export function addedRun(
  map: MapDocument,
  input: {
    readonly name: string;
    readonly from: NodeId | BodyPoint;
    readonly to: NodeId | BodyPoint;
    readonly bends: readonly BodyPoint[];
  },
  chance: Chance,
): Added {
  const end = (at: NodeId | BodyPoint): RoutePoint =>
    typeof at === 'string'
      ? { at: map.nodes.get(at)?.at ?? { xMm: 0, yMm: 0, zMm: 0 }, snap: { nodeId: at } }
      : { at };
  const routeName = named(input.name, drawWords.records.route, routeNames(map));
  const points = [end(input.from), ...input.bends.map((at) => ({ at })), end(input.to)];
  const patch = drawRoute(map, { routeName, points }, chance);
  const run = patch.ok ? patch.value.added.find(({ id }) => id.startsWith('segment:')) : undefined;
  return { id: run?.id ?? '', name: routeName, patch };
}

/** A fixing at a station of a run. */
export function addedClip(
  map: MapDocument,
  input: { readonly segmentId: SegmentId; readonly stationMm: number; readonly kind: ClipKind },
  chance: Chance,
): Added {
  const id = newId('clip', chance);
  const clip = { id, stationMm: input.stationMm, kind: input.kind, missing: false };
  return { id, name: drawWords.tools.clip, patch: addClip(map, { segmentId: input.segmentId, clip }) };
}

/** A panel over an area of corners; without corners it is one that is only in the order. */
export function addedPanel(
  map: MapDocument,
  input: {
    readonly kind: PanelKind;
    readonly name: string;
    readonly corners: readonly BodyPoint[];
    readonly minutesOff: number;
    readonly minutesOn: number;
  },
  chance: Chance,
): Added {
  const id = newId('panel', chance);
  const name = named(input.name, panelKindWords[input.kind], map.panels.values());
  const panel = {
    id,
    name,
    kind: input.kind,
    area: input.corners.map(({ xMm, yMm }) => ({ xMm, yMm })),
    minutesOff: input.minutesOff,
    minutesOn: input.minutesOn,
    offFirst: [],
    cautions: [],
    note: '',
    order: nextOrder(map.panels.values()),
  };
  return { id, name, patch: addPanel(map, { panel }) };
}

/** A rub spot of one place, a line or an area. */
export function addedRubSpot(
  map: MapDocument,
  input: {
    readonly kind: RubSpotKind;
    readonly name: string;
    readonly shape: RubSpot['shape'];
    readonly places: readonly BodyPoint[];
  },
  chance: Chance,
): Added {
  const id = newId('rub-spot', chance);
  const name = named(input.name, rubSpotKindWords[input.kind], map.rubSpots.values());
  const rubSpot: RubSpot = {
    id,
    name,
    kind: input.kind,
    shape: input.shape,
    points: [...input.places],
    clearanceMm: null,
    side: 'level',
    severity: 2,
    timesFound: 0,
    note: '',
  };
  return { id, name, patch: addRubSpot(map, { rubSpot }) };
}

/** An outline through corners. */
export function addedOutline(
  map: MapDocument,
  input: {
    readonly kind: OutlineKind;
    readonly name: string;
    readonly corners: readonly BodyPoint[];
    readonly closed: boolean;
  },
  chance: Chance,
): Added {
  const id = newId('outline', chance);
  const name = named(input.name, outlineKindWords[input.kind], map.outlines.values());
  const outline = {
    id,
    name,
    kind: input.kind,
    closed: input.closed,
    vertices: input.corners.map(({ xMm, yMm }) => ({ xMm, yMm })),
    order: nextOrder(map.outlines.values()),
  };
  return { id, name, patch: addOutline(map, { outline }) };
}
