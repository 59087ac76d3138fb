import { emptyMap, type MapDocument } from '#core/map/map-document.ts';
import type { Circuit, Clip, MapNode, RubSpot, Segment } from '#core/map/records.ts';
import type { Chance } from '#core/quantity/chance.ts';
import type { NodeId, SegmentId } from '#core/quantity/id.ts';

/** Small invented maps for the chafe tests, made from parts so that each test says only what matters. */

export const node = (id: NodeId, kind: MapNode['kind'], xMm: number, yMm = 0, zMm = 0): MapNode => ({
  id,
  name: id,
  kind,
  at: { xMm, yMm, zMm },
  panelIds: [],
  note: '',
});

export const run = (
  id: SegmentId,
  fromNodeId: NodeId,
  toNodeId: NodeId,
  changes: Partial<Segment> = {},
): Segment => ({
  id,
  name: id,
  routeName: 'Test',
  fromNodeId,
  toNodeId,
  bends: [],
  smooth: false,
  bundleDiameterMm: null,
  measuredLengthMm: null,
  covering: 'bare',
  clips: [],
  traits: [],
  tags: [],
  unchecked: false,
  note: '',
  ...changes,
});

export const clip = (name: string, stationMm: number, changes: Partial<Clip> = {}): Clip => ({
  id: `clip:${name}`,
  stationMm,
  kind: 'clip',
  missing: false,
  ...changes,
});

export const spot = (name: string, xMm: number, yMm: number, changes: Partial<RubSpot> = {}): RubSpot => ({
  id: `rub-spot:${name}`,
  name,
  kind: 'raw-edge',
  shape: 'point',
  points: [{ xMm, yMm, zMm: 0 }],
  clearanceMm: null,
  side: 'level',
  severity: 2,
  timesFound: 0,
  note: '',
  ...changes,
});

export const circuit = (
  name: string,
  runs: readonly SegmentId[],
  changes: Partial<Circuit> = {},
): Circuit => ({
  id: `circuit:${name}`,
  name,
  wireColours: [],
  conductorMm2: 0.5,
  insulation: 'thin-wall',
  duty: 'ordinary',
  fuseA: null,
  path: runs.map((segmentId) => ({ segmentId, reversed: false })),
  pins: [],
  ends: [
    { nodeId: null, kind: 'other' },
    { nodeId: null, kind: 'other' },
  ],
  note: '',
  order: 0,
  ...changes,
});

export function mapOf(parts: {
  readonly nodes: readonly MapNode[];
  readonly runs: readonly Segment[];
  readonly spots?: readonly RubSpot[];
  readonly circuits?: readonly Circuit[];
}): MapDocument {
  const byId = <R extends { readonly id: string }>(records: readonly R[]) =>
    new Map(records.map((record) => [record.id as R['id'], record]));
  return {
    ...emptyMap('map:chafe', 'Chafe test', 'hatch', 'right'),
    nodes: byId(parts.nodes),
    segments: byId(parts.runs),
    rubSpots: byId(parts.spots ?? []),
    circuits: byId(parts.circuits ?? []),
  };
}

/** One straight run between two plugs with its clips and spots. */
export function straightMap(
  lengthMm: number,
  changes: Partial<Segment> = {},
  spots: readonly RubSpot[] = [],
): MapDocument {
  return mapOf({
    nodes: [node('node:a', 'inline-connector', 0), node('node:b', 'inline-connector', lengthMm)],
    runs: [run('segment:only', 'node:a', 'node:b', changes)],
    spots,
  });
}

export const onlyRun = (map: MapDocument): Segment => map.segments.get('segment:only') as Segment;

/** A harness of many runs, branching at random, with clips, bends and spots: for measuring and for laws. */
export function randomMap(chance: Chance, runCount: number): MapDocument {
  const nodes: MapNode[] = [node('node:0', 'fuse-box', 0)];
  const runs: Segment[] = [];
  const spots: RubSpot[] = [];
  const kinds = ['branch', 'inline-connector', 'splice', 'grommet', 'module', 'ground-point'] as const;
  const spotKinds = ['burr', 'raw-edge', 'flange', 'bracket', 'seat-mount', 'hinge'] as const;
  const coverings = ['bare', 'pvc-tape', 'cloth-tape', 'convoluted-tube'] as const;
  const traits = ['crosses-hinge', 'slides-with-seat', 'under-feet', 'wet', 'hot', 'drawn-tight'] as const;
  const pick = <T>(list: readonly T[]): T => list[Math.floor(chance() * list.length)] as T;
  const columns = Math.ceil(Math.sqrt(runCount));
  for (let i = 1; i <= runCount; i++) {
    const before = nodes[Math.max(0, i - 1 - Math.floor(chance() * 3))] as MapNode;
    const id: NodeId = `node:${i}`;
    // Rows are filled to and fro, so that no run crosses the whole drawing.
    const row = Math.floor(i / columns);
    const column = row % 2 === 0 ? i % columns : columns - 1 - (i % columns);
    const at = node(id, pick(kinds), column * 400 + chance() * 100, row * 400 + chance() * 100);
    nodes.push(at);
    const bends =
      chance() < 0.4
        ? [
            {
              xMm: (before.at.xMm + at.at.xMm) / 2 + chance() * 80,
              yMm: (before.at.yMm + at.at.yMm) / 2 + chance() * 80,
              zMm: 0,
            },
          ]
        : [];
    const clips = Array.from({ length: Math.floor(chance() * 3) }, (_, k) =>
      clip(`${i}-${k}`, chance() * 300),
    );
    runs.push(
      run(`segment:${i}`, before.id, id, {
        bends,
        smooth: chance() < 0.5,
        clips,
        covering: pick(coverings),
        traits: chance() < 0.15 ? [pick(traits)] : [],
      }),
    );
    if (chance() < 0.3) {
      const clearanceMm = chance() < 0.5 ? Math.round(chance() * 20) : null;
      spots.push(
        spot(`${i}`, at.at.xMm + chance() * 40, at.at.yMm - chance() * 40, {
          kind: pick(spotKinds),
          clearanceMm,
        }),
      );
    }
  }
  return mapOf({ nodes, runs, spots });
}
