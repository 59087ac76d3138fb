import type { BodyPoint } from '#core/geometry/place.ts';
import {
  type BodyStyle,
  clipKinds,
  coverings,
  type NodeKind,
  rubSpotKinds,
  type SegmentTrait,
} from '#core/map/kinds.ts';
import { emptyMap, type MapDocument } from '#core/map/map-document.ts';
import type { Circuit, MapNode, Panel, PanelTag, PathStep, RubSpot, Segment } from '#core/map/records.ts';
import { segmentLine } from '#core/map/segment-line.ts';
import { tracePath } from '#core/map/trace-path.ts';
import { newId } from '#core/quantity/id.ts';
import type { Draw } from '#tests/generated/draw.ts';
import { bodySizes, type PanelPlan, panelPlans } from './vehicle-plan.ts';

const roofMm = 1_300;
/** Shorter circuits are looked at from end to end without any plan. */
const leastCircuitMm = 3_000;

const partKinds: readonly NodeKind[] = ['switch', 'sensor', 'load', 'load'];

const byId = <T extends { readonly id: string }>(records: readonly T[]): Map<T['id'], T> =>
  new Map(records.map((record) => [record.id, record]));

interface DrawnPanel extends PanelPlan {
  readonly record: Panel;
}

/**
 * An invented vehicle of a body shape: its panels with 15 to 60 of them in all, looms down both sills,
 * across and along the roof in 20 to 120 runs, parts at the ends of branches, mapped rub spots, and one
 * circuit from the module at the dash to a part.
 */
export function randomVehicle(draw: Draw, shape: BodyStyle): { map: MapDocument; circuit: Circuit } {
  const [lengthMm, halfMm] = bodySizes[shape] as readonly [number, number];
  const panels = drawPanels(draw, panelPlans[shape] ?? [], draw.whole(15, 60), lengthMm, halfMm);
  const { nodes, segments, module, parts } = drawLooms(draw, lengthMm, halfMm, panels, draw.whole(20, 120));
  const nodesById = byId(nodes);
  const drawn: MapDocument = {
    ...emptyMap(newId('map', draw.chance), `Invented ${shape}`, shape, 'left'),
    nodes: nodesById,
    segments: byId(segments),
    panels: byId(panels.map(({ record }) => record)),
    rubSpots: byId(drawSpots(draw, nodesById, segments)),
  };
  const ways = parts.flatMap((part) => {
    const path = tracePath(drawn, { fromNodeId: module.id, toNodeId: part.id });
    return path.ok ? [{ part, path: path.value, lengthMm: pathLengthMm(drawn, path.value) }] : [];
  });
  const long = ways.filter((way) => way.lengthMm >= leastCircuitMm);
  const longest = ways.reduce((a, b) => (b.lengthMm > a.lengthMm ? b : a));
  const { part: end, path } = long.length > 0 ? draw.pick(long) : longest;
  const circuit: Circuit = {
    id: newId('circuit', draw.chance),
    name: 'searched circuit',
    wireColours: [],
    conductorMm2: draw.pick([0.35, 0.5, 0.75, 1]),
    insulation: draw.pick(['thin-wall', 'thin-wall', 'thick-wall'] as const),
    duty: 'ordinary',
    fuseA: null,
    path: [...path],
    pins: [],
    ends: [
      { nodeId: module.id, kind: 'module-input-pull-up' },
      { nodeId: end.id, kind: end.kind === 'switch' ? 'switch-to-ground' : 'load' },
    ],
    note: '',
    order: 0,
  };
  return { map: { ...drawn, circuits: byId([circuit]) }, circuit };
}

function pathLengthMm(map: MapDocument, path: readonly PathStep[]): number {
  return path.reduce((sum, { segmentId }) => {
    const segment = map.segments.get(segmentId);
    return sum + (segment ? (segmentLine(map, segment)?.lengthMm ?? 0) : 0);
  }, 0);
}

function drawPanels(
  draw: Draw,
  plans: readonly PanelPlan[],
  count: number,
  lengthMm: number,
  halfMm: number,
): DrawnPanel[] {
  let pieces = plans.filter((_, i) => i < 10 || plans.length <= count || draw.happens(count / plans.length));
  // Larger trim comes in several pieces until there are as many panels as drawn.
  while (pieces.length < count) {
    const whole = draw.pick(pieces);
    const [front, rear, left, right] = whole.box;
    const at = front + (rear - front) * (0.35 + 0.3 * draw.chance());
    const split = ([from, to]: readonly [number, number], word: string): PanelPlan => ({
      ...whole,
      name: `${whole.name} ${word}`,
      box: [from, to, left, right],
      minutes: [Math.max(1, whole.minutes[0] * 0.6), whole.minutes[1] * 0.7],
    });
    pieces = [...pieces.filter((each) => each !== whole), split([front, at], 'a'), split([at, rear], 'b')];
  }
  const ids = pieces.map(() => newId('panel', draw.chance));
  return pieces.map((plan, order) => {
    const [front, rear, left, right] = plan.box;
    const waitsFor = (other: PanelPlan, i: number) =>
      i !== order &&
      plan.after.some((name) => other.name === name || other.name.startsWith(`${name} `)) &&
      other.box[0] < plan.box[1] + 0.02 &&
      other.box[1] > plan.box[0] - 0.02;
    const minutesOff = Math.round(draw.between(plan.minutes[0], plan.minutes[1]));
    const record: Panel = {
      id: ids[order] as Panel['id'],
      name: plan.name,
      kind: plan.kind,
      area: [
        { xMm: front * lengthMm, yMm: left * halfMm },
        { xMm: rear * lengthMm, yMm: left * halfMm },
        { xMm: rear * lengthMm, yMm: right * halfMm },
        { xMm: front * lengthMm, yMm: right * halfMm },
      ],
      minutesOff,
      minutesOn: Math.round(minutesOff * draw.between(1, 1.4)),
      offFirst: ids.filter((_, i) => waitsFor(pieces[i] as PanelPlan, i)),
      cautions: [...plan.cautions],
      note: '',
      order,
    };
    return { ...plan, record };
  });
}

function drawLooms(
  draw: Draw,
  lengthMm: number,
  halfMm: number,
  panels: readonly DrawnPanel[],
  runCount: number,
): { nodes: MapNode[]; segments: Segment[]; module: MapNode; parts: MapNode[] } {
  const nodes: MapNode[] = [];
  const segments: Segment[] = [];
  const addNode = (kind: NodeKind, at: BodyPoint): MapNode => {
    const node: MapNode = {
      id: newId('node', draw.chance),
      name: `${kind} ${nodes.length}`,
      kind,
      at,
      panelIds: panelsOver(panels, at).map(({ record }) => record.id),
      note: '',
    };
    nodes.push(node);
    return node;
  };
  const addRun = (from: MapNode, to: MapNode, before: Segment | null): Segment => {
    const run = drawRun(draw, from, to, panels, before);
    segments.push(run);
    return run;
  };
  const place = (x: number, y: number, zMm: number): BodyPoint => ({
    xMm: Math.round(x * lengthMm + draw.between(-40, 40)),
    yMm: Math.round(y * halfMm + draw.between(-25, 25)),
    zMm: Math.round(zMm + draw.between(-10, 10)),
  });
  const module = addNode('module', place(0.29, -0.5, 400));
  // Each trunk: corners as shares of length and half width with height; pieces fall in between.
  const trunks: readonly (readonly [number, number, number])[][] = [
    [
      [0.33, -0.9, 60],
      [0.6, -0.92, 40],
      [0.75, -0.9, 250],
      [0.95, -0.7, 300],
    ],
    [
      [0.3, 0.6, 450],
      [0.33, 0.9, 60],
      [0.6, 0.92, 40],
      [0.75, 0.9, 250],
      [0.95, 0.7, 300],
    ],
    [
      [0.34, -0.95, 800],
      [0.38, -0.7, roofMm],
      [0.7, -0.7, roofMm],
      [0.92, -0.5, roofMm],
    ],
    [
      [0.36, -0.1, 80],
      [0.5, -0.1, 60],
      [0.62, 0.1, 60],
      [0.78, 0.2, 200],
    ],
  ];
  const trunkRuns = Math.max(1, Math.floor((runCount * 0.6) / trunks.length));
  const joints: MapNode[] = [];
  for (const corners of trunks) {
    let at = module;
    let before: Segment | null = null;
    const perLeg = Math.max(1, Math.round(trunkRuns / corners.length));
    let from: readonly [number, number, number] = [0.29, -0.5, 400];
    for (const corner of corners) {
      for (let i = 1; i <= perLeg; i++) {
        const mix = (k: 0 | 1 | 2): number => from[k] + ((corner[k] - from[k]) * i) / perLeg;
        const kind = draw.happens(0.14)
          ? 'inline-connector'
          : draw.happens(0.12)
            ? draw.pick(['grommet', 'splice'] as const)
            : 'branch';
        const next = addNode(kind, place(mix(0), mix(1), mix(2)));
        before = addRun(at, next, draw.happens(0.7) ? before : null);
        joints.push(next);
        at = next;
      }
      from = corner;
    }
  }
  const parts: MapNode[] = [];
  while (segments.length < runCount || parts.length < 4) {
    const from = draw.pick(joints);
    const at = {
      xMm: Math.min(lengthMm - 20, from.at.xMm + draw.between(-250, 400)),
      yMm: Math.max(-halfMm + 10, Math.min(halfMm - 10, from.at.yMm + draw.between(-300, 300))),
      zMm: from.at.zMm + draw.between(-30, 120),
    };
    const part = addNode(draw.pick(partKinds), at);
    addRun(from, part, null);
    parts.push(part);
  }
  return { nodes, segments, module, parts };
}

const isRoof = (at: BodyPoint): boolean => at.zMm > roofMm - 200;

function panelsOver(panels: readonly DrawnPanel[], at: BodyPoint): DrawnPanel[] {
  return panels.filter(({ level, record }) => {
    const [frontLeft, , rearRight] = record.area;
    if (!frontLeft || !rearRight || (level === 'roof') !== isRoof(at)) return false;
    return (
      at.xMm >= frontLeft.xMm && at.xMm <= rearRight.xMm && at.yMm >= frontLeft.yMm && at.yMm <= rearRight.yMm
    );
  });
}

function drawRun(
  draw: Draw,
  from: MapNode,
  to: MapNode,
  panels: readonly DrawnPanel[],
  before: Segment | null,
): Segment {
  const [a, b] = [from.at, to.at];
  const lengthMm = Math.hypot(b.xMm - a.xMm, b.yMm - a.yMm, b.zMm - a.zMm);
  const clips: Segment['clips'] = [];
  for (let at = draw.between(40, 250); at < lengthMm - 20; at += draw.between(110, 420)) {
    clips.push({
      id: newId('clip', draw.chance),
      stationMm: at,
      kind: draw.pick(clipKinds),
      missing: draw.happens(0.06),
    });
  }
  const traits: SegmentTrait[] = [];
  if (a.zMm < 120 && Math.abs(a.yMm) < 700 && draw.happens(0.3)) traits.push('under-feet');
  if (draw.happens(0.06)) traits.push('wet');
  if (isRoof(a) && draw.happens(0.15)) traits.push('crosses-hinge');
  if (to.kind === 'switch' && draw.happens(0.15)) traits.push('slides-with-seat');
  return {
    id: newId('segment', draw.chance),
    name: `run to ${to.name}`,
    routeName: 'loom',
    fromNodeId: from.id,
    toNodeId: to.id,
    bends: [],
    smooth: false,
    bundleDiameterMm: before?.bundleDiameterMm ?? draw.between(4, 18),
    measuredLengthMm: null,
    covering: before?.covering ?? draw.pick(coverings),
    clips,
    traits,
    tags: tagsAlong(a, b, lengthMm, panels),
    unchecked: false,
    note: '',
  };
}

/** Which panels lie over a straight run, read off every 20 mm. */
function tagsAlong(a: BodyPoint, b: BodyPoint, lengthMm: number, panels: readonly DrawnPanel[]): PanelTag[] {
  const steps = Math.max(1, Math.ceil(lengthMm / 20));
  const reach = new Map<Panel['id'], { fromMm: number; toMm: number }>();
  for (let i = 0; i < steps; i++) {
    const share = (i + 0.5) / steps;
    const at = {
      xMm: a.xMm + (b.xMm - a.xMm) * share,
      yMm: a.yMm + (b.yMm - a.yMm) * share,
      zMm: a.zMm + (b.zMm - a.zMm) * share,
    };
    for (const { record } of panelsOver(panels, at)) {
      const fromMm = (lengthMm * i) / steps;
      const known = reach.get(record.id);
      reach.set(record.id, { fromMm: known?.fromMm ?? fromMm, toMm: fromMm + lengthMm / steps });
    }
  }
  return [...reach].map(([panelId, range]) => ({ panelId, ...range, confirmed: true }));
}

function drawSpots(
  draw: Draw,
  nodes: ReadonlyMap<MapNode['id'], MapNode>,
  segments: readonly Segment[],
): RubSpot[] {
  return Array.from({ length: draw.whole(5, 30) }, (_, i) => {
    const run = draw.pick(segments);
    const from = (nodes.get(run.fromNodeId) as MapNode).at;
    const to = (nodes.get(run.toNodeId) as MapNode).at;
    const share = draw.chance();
    return {
      id: newId('rub-spot', draw.chance),
      name: `spot ${i}`,
      kind: draw.pick(rubSpotKinds),
      shape: 'point',
      points: [
        {
          xMm: from.xMm + (to.xMm - from.xMm) * share + draw.between(-20, 20),
          yMm: from.yMm + (to.yMm - from.yMm) * share + draw.between(-20, 20),
          zMm: from.zMm + (to.zMm - from.zMm) * share,
        },
      ],
      clearanceMm: draw.between(0, 12),
      side: draw.pick(['below', 'level', 'above'] as const),
      severity: draw.pick([1, 2, 3] as const),
      timesFound: 0,
      note: '',
    };
  });
}
