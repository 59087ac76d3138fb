import type { Job } from '#core/job/job-document.ts';
import { emptyMap, type MapDocument } from '#core/map/map-document.ts';
import type { Circuit, MapNode, Panel, RubSpot, Segment } from '#core/map/records.ts';
import { seededChance } from '#core/quantity/chance.ts';
import { newId } from '#core/quantity/id.ts';

const runMm = 500;

const byId = <K extends string, T extends { readonly id: K }>(records: readonly T[]): Map<K, T> =>
  new Map(records.map((record) => [record.id, record]));

/**
 * An invented circuit that zigzags through a body until it is `cells` cells of 10 mm long, under `panels`
 * panels that partly need each other, with fixings and rub spots: the size the speed figures speak of.
 */
export function longCircuit(cells: number, panelCount: number, seed = 1): { map: MapDocument; job: Job } {
  const chance = seededChance(seed);
  const runCount = Math.ceil((cells * 10) / runMm);
  const panels: Panel[] = Array.from({ length: panelCount }, (_, index) => ({
    id: newId('panel', chance),
    name: `Panel ${index + 1}`,
    kind: 'other',
    area: [],
    minutesOff: 2 + Math.round(chance() * 20),
    minutesOn: 5,
    offFirst: [],
    cautions: [],
    note: '',
    order: index,
  }));
  for (let i = 3; i < panels.length; i++) {
    const panel = panels[i] as Panel;
    const first = panels[Math.floor(chance() * 3) + i - 3] as Panel;
    if (chance() < 0.5) panels[i] = { ...panel, offFirst: [first.id] };
  }
  const nodes: MapNode[] = Array.from({ length: runCount + 1 }, (_, index) => ({
    id: newId('node', chance),
    name: `Place ${index}`,
    kind: index % 12 === 6 ? 'inline-connector' : 'branch',
    at: { xMm: (index % 8) * runMm, yMm: Math.floor(index / 8) * 40, zMm: 0 },
    panelIds: [],
    note: '',
  }));
  const segments: Segment[] = Array.from({ length: runCount }, (_, index) => {
    const panelA = panels[Math.floor((index / runCount) * panelCount)] as Panel;
    const panelB = panels[Math.floor(chance() * panelCount)] as Panel;
    return {
      id: newId('segment', chance),
      name: `Run ${index}`,
      routeName: 'Long way',
      fromNodeId: (nodes[index] as MapNode).id,
      toNodeId: (nodes[index + 1] as MapNode).id,
      bends: [],
      smooth: false,
      bundleDiameterMm: 8,
      measuredLengthMm: runMm,
      covering: chance() < 0.5 ? 'pvc-tape' : 'convoluted-tube',
      clips: [80, 200 + Math.round(chance() * 100), 420].map((stationMm) => ({
        id: newId('clip', chance),
        stationMm,
        kind: 'clip' as const,
        missing: chance() < 0.1,
      })),
      traits: [],
      tags: [
        { panelId: panelA.id, fromMm: 0, toMm: runMm, confirmed: true },
        ...(chance() < 0.3 && panelB !== panelA
          ? [{ panelId: panelB.id, fromMm: 100, toMm: 300, confirmed: true }]
          : []),
      ],
      unchecked: false,
      note: '',
    } satisfies Segment;
  });
  const rubSpots: RubSpot[] = Array.from({ length: Math.ceil(runCount / 3) }, (_, index) => {
    const at = (nodes[index * 3] as MapNode).at;
    return {
      id: newId('rub-spot', chance),
      name: `Spot ${index}`,
      kind: chance() < 0.5 ? 'raw-edge' : 'bracket',
      shape: 'point',
      points: [{ xMm: at.xMm + chance() * 200, yMm: at.yMm + 8, zMm: 0 }],
      clearanceMm: chance() * 12,
      side: 'level',
      severity: 2,
      timesFound: 0,
      note: '',
    };
  });
  const circuit: Circuit = {
    id: 'circuit:long',
    name: 'Long circuit',
    wireColours: [],
    conductorMm2: 0.5,
    insulation: 'thin-wall',
    duty: 'ordinary',
    fuseA: null,
    path: segments.map(({ id }) => ({ segmentId: id, reversed: false })),
    pins: [],
    ends: [
      { nodeId: (nodes[0] as MapNode).id, kind: 'module-input-pull-up' },
      { nodeId: (nodes[runCount] as MapNode).id, kind: 'switch-to-ground' },
    ],
    note: '',
    order: 0,
  };
  const map: MapDocument = {
    ...emptyMap('map:long', 'Long circuit', 'van', 'left'),
    nodes: byId(nodes),
    segments: byId(segments),
    panels: byId(panels),
    rubSpots: byId(rubSpots),
    circuits: new Map([[circuit.id, circuit]]),
  };
  const job: Job = {
    format: 'undertrim.job',
    version: 1,
    id: 'job:long',
    mapId: map.id,
    mapRevision: 0,
    openedAt: '2026-01-05T09:00:00Z',
    vehicle: { plate: 'BENCH', odometer: null, odometerUnit: 'km' },
    complaint: '',
    failureType: 'circuit-short-to-ground',
    circuitId: circuit.id,
    alsoFailingCircuitIds: [],
    workingCircuitIds: [],
    entries: [],
  };
  return { map, job };
}
