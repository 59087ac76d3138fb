import type { BodyPoint } from '#core/geometry/place.ts';
import type { StarterStyle } from '#core/map/body-proportions.ts';
import { addCircuit } from '#core/map/commands/add-circuit.ts';
import { addClip } from '#core/map/commands/add-clip.ts';
import { addClipsEvenly } from '#core/map/commands/add-clips-evenly.ts';
import { addDefaultPanels } from '#core/map/commands/add-default-panels.ts';
import { addNode } from '#core/map/commands/add-node.ts';
import { addOutline } from '#core/map/commands/add-outline.ts';
import { addPanel } from '#core/map/commands/add-panel.ts';
import { addRubSpot } from '#core/map/commands/add-rub-spot.ts';
import { addSegment } from '#core/map/commands/add-segment.ts';
import { addStarter } from '#core/map/commands/add-starter.ts';
import { addUnderlay } from '#core/map/commands/add-underlay.ts';
import { type Alignment, alignThings } from '#core/map/commands/align-things.ts';
import { changeCircuit } from '#core/map/commands/change-circuit.ts';
import { changeClip } from '#core/map/commands/change-clip.ts';
import { changeDetails } from '#core/map/commands/change-details.ts';
import { changeNode } from '#core/map/commands/change-node.ts';
import { changeOutline } from '#core/map/commands/change-outline.ts';
import { changePanel } from '#core/map/commands/change-panel.ts';
import { changeRubSpot } from '#core/map/commands/change-rub-spot.ts';
import { changeSegment } from '#core/map/commands/change-segment.ts';
import { changeUnderlay } from '#core/map/commands/change-underlay.ts';
import { closeOutline } from '#core/map/commands/close-outline.ts';
import { confirmTags } from '#core/map/commands/confirm-tags.ts';
import { drawRoute, type RoutePoint } from '#core/map/commands/draw-route.ts';
import { insertBend } from '#core/map/commands/insert-bend.ts';
import { insertVertex } from '#core/map/commands/insert-vertex.ts';
import { joinSegments } from '#core/map/commands/join-segments.ts';
import { layCircuit } from '#core/map/commands/lay-circuit.ts';
import { mirrorOutline } from '#core/map/commands/mirror-outline.ts';
import { mirrorThings } from '#core/map/commands/mirror-things.ts';
import { moveBend } from '#core/map/commands/move-bend.ts';
import { moveClip } from '#core/map/commands/move-clip.ts';
import { moveNode } from '#core/map/commands/move-node.ts';
import { moveThings } from '#core/map/commands/move-things.ts';
import { moveVertex } from '#core/map/commands/move-vertex.ts';
import { parallelRun } from '#core/map/commands/parallel-run.ts';
import { pasteThings } from '#core/map/commands/paste-things.ts';
import { placeUnderlay } from '#core/map/commands/place-underlay.ts';
import { proposeTags } from '#core/map/commands/propose-tags.ts';
import { removeBend } from '#core/map/commands/remove-bend.ts';
import { removeClip } from '#core/map/commands/remove-clip.ts';
import { removeThings } from '#core/map/commands/remove-things.ts';
import { removeVertex } from '#core/map/commands/remove-vertex.ts';
import { renameMap } from '#core/map/commands/rename-map.ts';
import { reverseSegment } from '#core/map/commands/reverse-segment.ts';
import { setHeights } from '#core/map/commands/set-heights.ts';
import { setScale } from '#core/map/commands/set-scale.ts';
import { setTag } from '#core/map/commands/set-tag.ts';
import { splitSegment } from '#core/map/commands/split-segment.ts';
import { traceCircuit } from '#core/map/commands/trace-circuit.ts';
import { copiedThings } from '#core/map/copied-things.ts';
import { clipKinds, coverings, nodeKinds } from '#core/map/kinds.ts';
import { type MapDocument, tableOfKind } from '#core/map/map-document.ts';
import type { Patch } from '#core/map/patch.ts';
import type { Segment } from '#core/map/records.ts';
import { segmentLine } from '#core/map/segment-line.ts';
import { seededChance } from '#core/quantity/chance.ts';
import { newId } from '#core/quantity/id.ts';
import type { Result } from '#core/quantity/result.ts';
import { type Draw, drawFrom } from './draw.ts';
import { randomUnderlay } from './random-body.ts';

type Verb = (map: MapDocument, draw: Draw) => Result<Patch> | null;

const alignments: readonly Alignment[] = [
  'left',
  'right',
  'front',
  'rear',
  'centre-line',
  'spread-along',
  'spread-across',
];
const starterStyles: readonly StarterStyle[] = ['hatch', 'saloon', 'estate', 'van', 'pickup', 'coupe'];

const somePlace = (draw: Draw): BodyPoint => ({
  xMm: draw.between(0, 4_000),
  yMm: draw.between(-800, 800),
  zMm: draw.between(0, 900),
});

const nudged = (draw: Draw, at: BodyPoint): BodyPoint => ({
  xMm: at.xMm + draw.between(-200, 200),
  yMm: at.yMm + draw.between(-200, 200),
  zMm: at.zMm + draw.between(-50, 50),
});

function one<T>(draw: Draw, table: ReadonlyMap<string, T>): T | null {
  return table.size > 0 ? draw.pick([...table.values()]) : null;
}

/** A run with a line, and a station somewhere on it. */
function onRun(map: MapDocument, draw: Draw): { segment: Segment; stationMm: number } | null {
  const segment = one(draw, map.segments);
  const line = segment && segmentLine(map, segment);
  return segment && line ? { segment, stationMm: draw.chance() * line.lengthMm } : null;
}

function onBend(map: MapDocument, draw: Draw): { segment: Segment; index: number } | null {
  const segment = one(draw, map.segments);
  if (!segment || segment.bends.length === 0) return null;
  return { segment, index: draw.whole(0, segment.bends.length - 1) };
}

function onClip(map: MapDocument, draw: Draw) {
  const clipped = [...map.segments.values()].filter((segment) => segment.clips.length > 0);
  if (clipped.length === 0) return null;
  const segment = draw.pick(clipped);
  return { segmentId: segment.id, clipId: draw.pick(segment.clips).id };
}

function onVertex(map: MapDocument, draw: Draw) {
  const outline = one(draw, map.outlines);
  return outline && { outlineId: outline.id, index: draw.whole(0, outline.vertices.length - 1) };
}

function someIds(map: MapDocument, draw: Draw): string[] {
  const all = Object.values(tableOfKind).flatMap((name) => [...map[name].keys()] as string[]);
  return Array.from({ length: Math.min(all.length, draw.whole(1, 4)) }, () => draw.pick(all));
}

function clipIds(map: MapDocument, draw: Draw): string[] {
  const clip = draw.happens(0.4) ? onClip(map, draw) : null;
  return clip ? [clip.clipId] : [];
}

function routePoint(map: MapDocument, draw: Draw): RoutePoint {
  const at = somePlace(draw);
  const node = one(draw, map.nodes);
  if (node && draw.happens(0.3)) return { at, snap: { nodeId: node.id } };
  const place = onRun(map, draw);
  if (place && draw.happens(0.3)) {
    return { at, snap: { segmentId: place.segment.id, stationMm: place.stationMm } };
  }
  return { at };
}

const verbs: Readonly<Record<string, Verb>> = {
  renameMap: (map, draw) => renameMap(map, { name: `Car ${draw.whole(1, 999)}` }),
  changeDetails: (map, draw) => changeDetails(map, { changes: { centreLineYMm: draw.between(-20, 20) } }),
  setScale: (map, draw) =>
    setScale(map, { from: somePlace(draw), to: somePlace(draw), distanceMm: draw.between(800, 3_000) }),
  addOutline: (map, draw) => {
    const outline = one(draw, map.outlines);
    return outline && addOutline(map, { outline: { ...outline, id: newId('outline', draw.chance) } });
  },
  changeOutline: (map, draw) => {
    const outline = one(draw, map.outlines);
    return outline && changeOutline(map, { outlineId: outline.id, changes: { name: 'Renamed' } });
  },
  closeOutline: (map, draw) => {
    const outline = one(draw, map.outlines);
    return outline && closeOutline(map, { outlineId: outline.id, closed: !outline.closed });
  },
  moveVertex: (map, draw) => {
    const at = onVertex(map, draw);
    return at && moveVertex(map, { ...at, at: somePlace(draw) });
  },
  removeVertex: (map, draw) => {
    const at = onVertex(map, draw);
    return at && removeVertex(map, at);
  },
  insertVertex: (map, draw) => {
    const at = onVertex(map, draw);
    return (
      at && insertVertex(map, { outlineId: at.outlineId, edge: at.index, share: draw.between(0.1, 0.9) })
    );
  },
  mirrorOutline: (map, draw) => {
    const outline = one(draw, map.outlines);
    if (!outline) return null;
    const outlineId = outline.id;
    return draw.happens(0.5)
      ? mirrorOutline(map, { outlineId, how: 'copy', copyId: newId('outline', draw.chance) })
      : mirrorOutline(map, { outlineId, how: 'complete' });
  },
  addUnderlay: (map, draw) => addUnderlay(map, { underlay: randomUnderlay(draw) }),
  changeUnderlay: (map, draw) => {
    const underlay = one(draw, map.underlays);
    return underlay && changeUnderlay(map, { underlayId: underlay.id, changes: { hidden: true } });
  },
  addNode: (map, draw) =>
    addNode(map, {
      node: {
        id: newId('node', draw.chance),
        name: 'New',
        kind: draw.pick(nodeKinds),
        at: somePlace(draw),
        panelIds: [],
        note: '',
      },
    }),
  moveNode: (map, draw) => {
    const node = one(draw, map.nodes);
    return node && moveNode(map, { nodeId: node.id, at: nudged(draw, node.at) });
  },
  changeNode: (map, draw) => {
    const node = one(draw, map.nodes);
    return node && changeNode(map, { nodeId: node.id, changes: { kind: draw.pick(nodeKinds) } });
  },
  addSegment: (map, draw) => {
    const like = one(draw, map.segments);
    const from = one(draw, map.nodes);
    const to = one(draw, map.nodes);
    if (!like || !from || !to) return null;
    const segment = {
      ...like,
      id: newId('segment', draw.chance),
      fromNodeId: from.id,
      toNodeId: to.id,
      bends: [],
      clips: [],
      tags: [],
    };
    return addSegment(map, { segment });
  },
  drawRoute: (map, draw) => {
    const points = Array.from({ length: draw.whole(2, 6) }, () => routePoint(map, draw));
    return drawRoute(map, { routeName: 'Drawn', points }, draw.chance);
  },
  changeSegment: (map, draw) => {
    const segment = one(draw, map.segments);
    if (!segment) return null;
    const changes = draw.happens(0.5)
      ? { smooth: !segment.smooth }
      : { covering: draw.pick(coverings), measuredLengthMm: draw.between(100, 900) };
    return changeSegment(map, { segmentId: segment.id, changes });
  },
  moveBend: (map, draw) => {
    const bend = onBend(map, draw);
    const at = bend?.segment.bends[bend.index];
    return bend && at
      ? moveBend(map, { segmentId: bend.segment.id, index: bend.index, at: nudged(draw, at) })
      : null;
  },
  removeBend: (map, draw) => {
    const bend = onBend(map, draw);
    return bend && removeBend(map, { segmentId: bend.segment.id, index: bend.index });
  },
  insertBend: (map, draw) => {
    const place = onRun(map, draw);
    return place && insertBend(map, { segmentId: place.segment.id, stationMm: place.stationMm });
  },
  splitSegment: (map, draw) => {
    const place = onRun(map, draw);
    if (!place) return null;
    const ids = { nodeId: newId('node', draw.chance), segmentId: newId('segment', draw.chance) };
    return splitSegment(map, { segmentId: place.segment.id, stationMm: place.stationMm, ids });
  },
  joinSegments: (map, draw) => {
    // Few branches have just two like runs: take the first that can be joined, from anywhere in the list.
    const branches = [...map.nodes.values()].filter((node) => node.kind === 'branch');
    const start = draw.whole(0, branches.length);
    const tries = [...branches.slice(start), ...branches.slice(0, start)].map((node) =>
      joinSegments(map, { nodeId: node.id }),
    );
    return tries.find((patch) => patch.ok) ?? tries[0] ?? null;
  },
  reverseSegment: (map, draw) => {
    const segment = one(draw, map.segments);
    return segment && reverseSegment(map, { segmentId: segment.id });
  },
  addClip: (map, draw) => {
    const place = onRun(map, draw);
    if (!place) return null;
    const clip = {
      id: newId('clip', draw.chance),
      stationMm: place.stationMm,
      kind: draw.pick(clipKinds),
      missing: false,
    };
    return addClip(map, { segmentId: place.segment.id, clip });
  },
  addClipsEvenly: (map, draw) => {
    const place = onRun(map, draw);
    if (!place) return null;
    const input = { segmentId: place.segment.id, fromMm: 0, toMm: place.stationMm, count: draw.whole(1, 6) };
    return addClipsEvenly(map, { ...input, kind: draw.pick(clipKinds) }, draw.chance);
  },
  changeClip: (map, draw) => {
    const clip = onClip(map, draw);
    return clip && changeClip(map, { ...clip, changes: { missing: true } });
  },
  moveClip: (map, draw) => {
    const clip = onClip(map, draw);
    return clip && moveClip(map, { ...clip, stationMm: draw.between(0, 300) });
  },
  removeClip: (map, draw) => {
    const clip = onClip(map, draw);
    return clip && removeClip(map, clip);
  },
  addPanel: (map, draw) => {
    const panel = one(draw, map.panels);
    return panel && addPanel(map, { panel: { ...panel, id: newId('panel', draw.chance) } });
  },
  changePanel: (map, draw) => {
    const panel = one(draw, map.panels);
    const first = one(draw, map.panels);
    return panel && first && changePanel(map, { panelId: panel.id, changes: { offFirst: [first.id] } });
  },
  addRubSpot: (map, draw) => {
    const rubSpot = one(draw, map.rubSpots);
    return rubSpot && addRubSpot(map, { rubSpot: { ...rubSpot, id: newId('rub-spot', draw.chance) } });
  },
  changeRubSpot: (map, draw) => {
    const spot = one(draw, map.rubSpots);
    return spot && changeRubSpot(map, { rubSpotId: spot.id, changes: { clearanceMm: draw.between(0, 20) } });
  },
  moveThings: (map, draw) =>
    moveThings(map, {
      ids: [...someIds(map, draw), ...clipIds(map, draw)],
      dxMm: draw.between(-300, 300),
      dyMm: draw.between(-300, 300),
    }),
  addCircuit: (map, draw) => {
    const circuit = one(draw, map.circuits);
    return circuit && addCircuit(map, { circuit: { ...circuit, id: newId('circuit', draw.chance) } });
  },
  changeCircuit: (map, draw) => {
    const circuit = one(draw, map.circuits);
    return circuit && changeCircuit(map, { circuitId: circuit.id, changes: { fuseA: draw.whole(1, 30) } });
  },
  traceCircuit: (map, draw) => {
    const circuit = one(draw, map.circuits);
    const from = one(draw, map.nodes);
    const to = one(draw, map.nodes);
    return circuit && from && to
      ? traceCircuit(map, { circuitId: circuit.id, fromNodeId: from.id, toNodeId: to.id })
      : null;
  },
  layCircuit: (map, draw) => {
    const circuit = one(draw, map.circuits);
    if (!circuit) return null;
    const kept = circuit.path.slice(0, draw.whole(1, Math.max(1, circuit.path.length)));
    const back = [...kept].reverse().map((step) => ({ ...step, reversed: !step.reversed }));
    return layCircuit(map, { circuitId: circuit.id, path: draw.happens(0.5) ? kept : back });
  },
  proposeTags: (map) => proposeTags(map, {}),
  confirmTags: (map) => confirmTags(map, {}),
  setTag: (map, draw) => {
    const place = onRun(map, draw);
    const panel = one(draw, map.panels);
    if (!place || !panel) return null;
    const over = draw.happens(0.6);
    return setTag(map, {
      segmentId: place.segment.id,
      panelId: panel.id,
      fromMm: place.stationMm / 3,
      toMm: place.stationMm,
      over,
    });
  },
  pasteThings: (map, draw) => {
    const things = copiedThings(map, someIds(map, draw));
    if (!things.ok) return things;
    const offset = { dxMm: draw.between(-300, 300), dyMm: draw.between(-300, 300) };
    return pasteThings(map, { things: things.value, ...offset }, draw.chance);
  },
  mirrorThings: (map, draw) =>
    mirrorThings(map, { ids: someIds(map, draw), how: draw.pick(['copy', 'turn']) }, draw.chance),
  alignThings: (map, draw) => alignThings(map, { ids: someIds(map, draw), how: draw.pick(alignments) }),
  parallelRun: (map, draw) => {
    const place = onRun(map, draw);
    if (!place) return null;
    const offsetMm = draw.pick([-1, 1]) * draw.between(5, 80);
    const part = draw.happens(0.5) ? { toMm: place.stationMm } : {};
    return parallelRun(map, { segmentId: place.segment.id, offsetMm, ...part }, draw.chance);
  },
  addStarter: (map, draw) => {
    const size = {
      lengthMm: draw.between(3_600, 5_400),
      widthMm: 1_800,
      wheelbaseMm: draw.between(2_300, 3_300),
    };
    return addStarter(map, { style: draw.pick(starterStyles), size }, draw.chance);
  },
  addDefaultPanels: (map, draw) => addDefaultPanels(map, { style: draw.pick(starterStyles) }, draw.chance),
  placeUnderlay: (map, draw) => {
    const underlay = one(draw, map.underlays);
    return (
      underlay &&
      placeUnderlay(map, {
        underlayId: underlay.id,
        picture: [
          { uPx: draw.between(0, 200), vPx: draw.between(0, 300) },
          { uPx: draw.between(300, 400), vPx: draw.between(0, 300) },
        ],
        body: [somePlace(draw), somePlace(draw)],
      })
    );
  },
  setHeights: (map, draw) => {
    const segment = one(draw, map.segments);
    if (!segment) return null;
    const bends = segment.bends.map((_, bend) => ({ at: { bend }, zMm: draw.between(0, 900) }));
    const ends = [{ at: draw.pick(['from', 'to'] as const), zMm: draw.between(0, 900) }];
    return setHeights(map, { segmentId: segment.id, heights: [...bends, ...ends] });
  },
  removeThings: (map, draw) => {
    const clip = onClip(map, draw);
    const ids = someIds(map, draw);
    return removeThings(map, { ids: clip && draw.happens(0.3) ? [...ids, clip.clipId] : ids });
  },
};

/** The verbs `randomEdit` knows, by name. */
export const verbNames: readonly string[] = Object.keys(verbs);

/**
 * One edit of the named kind with believable input drawn from the seed. Null where the map has nothing
 * to try it on; otherwise what the command answers, a refusal included.
 */
export function randomEdit(map: MapDocument, verb: string, seed: number): Result<Patch> | null {
  return verbs[verb]?.(map, drawFrom(seededChance(seed))) ?? null;
}
