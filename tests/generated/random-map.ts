import type { BodyPoint } from '#core/geometry/place.ts';
import { proposeTags } from '#core/map/commands/propose-tags.ts';
import {
  circuitEndKinds,
  clipKinds,
  coverings,
  type NodeKind,
  rubSpotKinds,
  segmentTraits,
} from '#core/map/kinds.ts';
import { emptyMap, type MapDocument } from '#core/map/map-document.ts';
import { applyPatch } from '#core/map/patch.ts';
import type { Circuit, MapNode, Panel, RubSpot, Segment } from '#core/map/records.ts';
import { segmentLine } from '#core/map/segment-line.ts';
import { tracePath } from '#core/map/trace-path.ts';
import { type Chance, seededChance } from '#core/quantity/chance.ts';
import { newId } from '#core/quantity/id.ts';
import { type Draw, drawFrom } from './draw.ts';
import { randomOutlines, randomPanels, randomUnderlay } from './random-body.ts';

/** How much to draw; what is left out takes a small car's share of the runs. */
export interface RandomMapWishes {
  readonly runs?: number;
  /** Bends on each run, on average. */
  readonly bendsPerRun?: number;
  readonly panels?: number;
  readonly rubSpots?: number;
  readonly circuits?: number;
  /** Share of the runs whose bends are rounded. */
  readonly smoothShare?: number;
}

const carLengthMm = 4_300;
const halfWidthMm = 850;

const throughKinds: readonly NodeKind[] = ['branch', 'branch', 'inline-connector', 'splice', 'grommet'];
const leafKinds: readonly NodeKind[] = ['module', 'switch', 'sensor', 'load', 'ground-point', 'loose-end'];

/**
 * An invented car with a believable map: a shell, seats and sills; one connected harness of runs that
 * wander rearward from a fuse box, with bends, heights, clips, traits and some measured lengths; panels over
 * it with an order of coming off; tags proposed from the areas and partly confirmed; rub spots beside
 * runs; circuits traced from end to end. The same seed and wishes always give the same map, and it has
 * no faults.
 */
export function randomMap(seed: number, wishes: RandomMapWishes = {}): MapDocument {
  const chance = seededChance(seed);
  const draw = drawFrom(chance);
  const runCount = wishes.runs ?? draw.whole(3, 25);
  const outlines = randomOutlines(draw, carLengthMm, halfWidthMm);
  const panels = randomPanels(draw, wishes.panels ?? draw.whole(2, 10), carLengthMm, halfWidthMm);
  const { nodes, segments } = randomHarness(draw, runCount, wishes, panels);
  const drawn: MapDocument = {
    ...emptyMap(newId('map', chance), `Invented car ${seed}`, 'hatch', draw.pick(['left', 'right'])),
    outlines: byId(outlines),
    underlays: byId(draw.happens(0.3) ? [randomUnderlay(draw)] : []),
    panels: byId(panels),
    nodes: byId(nodes),
    segments: byId(segments),
  };
  const proposed = proposeTags(drawn, {});
  if (!proposed.ok) throw new Error('proposing tags failed');
  const tagged = applyPatch(drawn, proposed.value);
  if (!tagged.ok) throw new Error('proposed tags do not apply');
  const finished = dressRuns(draw, tagged.value);
  const spots = randomRubSpots(draw, finished, wishes.rubSpots ?? draw.whole(0, 8));
  const circuits = randomCircuits(draw, finished, wishes.circuits ?? draw.whole(1, 5));
  return { ...finished, rubSpots: byId(spots), circuits: byId(circuits) };
}

const byId = <K extends string, T extends { readonly id: K }>(records: readonly T[]): Map<K, T> =>
  new Map(records.map((record) => [record.id, record]));

function randomHarness(
  draw: Draw,
  runCount: number,
  wishes: RandomMapWishes,
  panels: readonly Panel[],
): { nodes: MapNode[]; segments: Segment[] } {
  const { chance } = draw;
  const node = (kind: NodeKind, at: BodyPoint, index: number): MapNode => ({
    id: newId('node', chance),
    name: `${kind} ${index}`,
    kind,
    at,
    panelIds: panels.length > 0 && draw.happens(0.2) ? [draw.pick(panels).id] : [],
    note: '',
  });
  const start = node('fuse-box', { xMm: 300, yMm: draw.between(-500, 500), zMm: 600 }, 0);
  const nodes = [start];
  const open = [start];
  const segments: Segment[] = [];
  const arriving = new Map<MapNode['id'], Segment>();
  while (segments.length < runCount) {
    const from = draw.happens(0.6) ? (open[open.length - 1] as MapNode) : draw.pick(open);
    // A branch that has run for a while ends in a component; one always stays open.
    const ends = open.length > 2 && draw.happens(0.35);
    const crossTie = open.length > 3 && draw.happens(0.05) ? draw.pick(open) : null;
    const joins = crossTie && crossTie !== from && crossTie !== start ? crossTie : null;
    const to =
      joins ?? node(draw.pick(ends ? leafKinds : throughKinds), stepFrom(draw, from.at), nodes.length);
    if (!joins) {
      nodes.push(to);
      if (!ends) open.push(to);
    }
    // A run mostly goes on as the one before it was wrapped.
    const before = arriving.get(from.id);
    const like = draw.happens(0.6) ? before : undefined;
    const bendCount = Math.round(draw.chance() * 2 * (wishes.bendsPerRun ?? 2));
    const segment: Segment = {
      id: newId('segment', chance),
      name: `run ${segments.length}`,
      routeName: draw.pick(['Main run', 'Left sill', 'Right sill', 'Roof', 'Dash']),
      fromNodeId: from.id,
      toNodeId: to.id,
      bends: bendsBetween(draw, from.at, to.at, bendCount),
      smooth: draw.happens(wishes.smoothShare ?? 0.2),
      bundleDiameterMm: like ? like.bundleDiameterMm : draw.happens(0.3) ? draw.between(3, 25) : null,
      measuredLengthMm: null,
      covering: like?.covering ?? draw.pick(coverings),
      clips: [],
      traits: like ? like.traits : draw.happens(0.2) ? [draw.pick(segmentTraits)] : [],
      tags: [],
      unchecked: like?.unchecked ?? draw.happens(0.1),
      note: '',
    };
    segments.push(segment);
    arriving.set(to.id, segment);
  }
  return { nodes, segments };
}

/** The next node: mostly rearward, turned back at the car's ends and sides. */
function stepFrom(draw: Draw, at: BodyPoint): BodyPoint {
  const reflect = (value: number, low: number, high: number): number =>
    value < low ? 2 * low - value : value > high ? 2 * high - value : value;
  return {
    xMm: reflect(at.xMm + draw.between(-250, 550), 60, carLengthMm - 60),
    yMm: reflect(at.yMm + draw.between(-300, 300), -halfWidthMm + 20, halfWidthMm - 20),
    zMm: draw.between(0, 900),
  };
}

function bendsBetween(draw: Draw, from: BodyPoint, to: BodyPoint, count: number): BodyPoint[] {
  return Array.from({ length: count }, (_, i) => {
    const share = (i + 1) / (count + 1);
    return {
      xMm: from.xMm + (to.xMm - from.xMm) * share + draw.between(-40, 40),
      yMm: from.yMm + (to.yMm - from.yMm) * share + draw.between(-40, 40),
      zMm: from.zMm + (to.zMm - from.zMm) * share + draw.between(-20, 20),
    };
  });
}

/** Clips, measured lengths and confirmed tags: what needs the run's length to be known. */
function dressRuns(draw: Draw, map: MapDocument): MapDocument {
  const segments = new Map(map.segments);
  for (const segment of map.segments.values()) {
    const line = segmentLine(map, segment);
    if (!line) throw new Error('the generator drew a run without length');
    const stations = Array.from({ length: draw.whole(0, 5) }, () => draw.chance() * line.lengthMm);
    segments.set(segment.id, {
      ...segment,
      measuredLengthMm: draw.happens(0.2) ? line.lengthMm * (1 + draw.chance() * 0.05) : null,
      clips: stations
        .sort((a, b) => a - b)
        .map((stationMm) => ({
          id: newId('clip', draw.chance),
          stationMm,
          kind: draw.pick(clipKinds),
          missing: draw.happens(0.1),
        })),
      tags: segment.tags.map((tag) => ({ ...tag, confirmed: draw.happens(0.7) })),
      ...(segment.tags.length === 0 && draw.happens(0.3) ? { inView: true } : {}),
    });
  }
  return { ...map, segments };
}

function randomRubSpots(draw: Draw, map: MapDocument, count: number): RubSpot[] {
  const runs = [...map.segments.values()];
  return Array.from({ length: count }, (_, i) => {
    const line = segmentLine(map, draw.pick(runs));
    const near = draw.pick(line?.points ?? []);
    const shape = draw.pick(['point', 'line', 'area'] as const);
    const points = Array.from({ length: { point: 1, line: 2, area: 4 }[shape] }, () => ({
      xMm: near.xMm + draw.between(-60, 60),
      yMm: near.yMm + draw.between(-60, 60),
      zMm: near.zMm + draw.between(-20, 20),
    }));
    return {
      id: newId('rub-spot', draw.chance),
      name: `spot ${i}`,
      kind: draw.pick(rubSpotKinds),
      shape,
      points,
      clearanceMm: draw.happens(0.5) ? draw.between(0, 15) : null,
      side: draw.pick(['below', 'level', 'above'] as const),
      severity: draw.pick([1, 2, 3] as const),
      timesFound: draw.whole(0, 3),
      note: '',
    };
  });
}

function randomCircuits(draw: Draw, map: MapDocument, count: number): Circuit[] {
  const nodes = [...map.nodes.values()];
  const start = nodes[0] as MapNode;
  return Array.from({ length: count }, (_, order): Circuit => {
    const end = draw.pick(nodes.slice(1));
    const path = tracePath(map, { fromNodeId: start.id, toNodeId: end.id });
    return {
      id: newId('circuit', draw.chance),
      name: `circuit ${order}`,
      wireColours: [draw.pick(['red', 'black', 'blue', 'green', 'white'])],
      conductorMm2: draw.pick([0.35, 0.5, 0.75, 1, 2.5]),
      insulation: draw.pick(['thin-wall', 'thick-wall', 'ultra-thin-wall'] as const),
      duty: draw.pick(['ordinary', 'ordinary', 'ordinary', 'data', 'restraint'] as const),
      fuseA: draw.happens(0.5) ? draw.pick([5, 7.5, 10, 15]) : null,
      path: path.ok ? [...path.value] : [],
      pins: path.ok && draw.happens(0.5) ? [{ nodeId: end.id, pin: String(draw.whole(1, 40)) }] : [],
      ends: [
        { nodeId: start.id, kind: 'fused-supply' },
        { nodeId: end.id, kind: draw.pick(circuitEndKinds) },
      ],
      note: '',
      order,
    };
  });
}

/** A fresh source of ids and choices that no map of the same seed shares. */
export function chanceBeside(seed: number): Chance {
  return seededChance(seed ^ 0x5bd1e995);
}
