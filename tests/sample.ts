import type { HazardField } from '#core/chafe/hazard-field.ts';
import { type CircuitLine, layStraight } from '#core/circuit/circuit-line.ts';
import type { Job } from '#core/job/job-document.ts';
import { emptyMap, type MapDocument } from '#core/map/map-document.ts';
import type { Circuit, MapNode, Panel, RubSpot, Segment } from '#core/map/records.ts';

/**
 * A tiny three-run map for tests and for the worked examples in docstrings: nodes west, middle, east and
 * far at x = 0, 500, 1000 and 1500; one circuit from west to far; a seat over the middle run and a sill
 * tread under it; a raw edge beside the middle run. Invented, like every map in tests.
 */

const node = (id: MapNode['id'], name: string, kind: MapNode['kind'], xMm: number): MapNode => ({
  id,
  name,
  kind,
  at: { xMm, yMm: 0, zMm: 0 },
  panelIds: [],
  note: '',
});

const run = (
  id: Segment['id'],
  from: MapNode['id'],
  to: MapNode['id'],
  changes: Partial<Segment> = {},
): Segment => ({
  id,
  name: id.slice(8),
  routeName: 'Left sill',
  fromNodeId: from,
  toNodeId: to,
  bends: [],
  smooth: false,
  bundleDiameterMm: null,
  measuredLengthMm: null,
  covering: 'pvc-tape',
  clips: [],
  traits: [],
  tags: [],
  unchecked: false,
  note: '',
  ...changes,
});

const segment = run('segment:front', 'node:west', 'node:middle', {
  tags: [{ panelId: 'panel:tread', fromMm: 0, toMm: 500, confirmed: true }],
  clips: [
    { id: 'clip:a', stationMm: 100, kind: 'clip', missing: false },
    { id: 'clip:b', stationMm: 400, kind: 'clip', missing: false },
  ],
});

const middle = run('segment:middle', 'node:middle', 'node:east', {
  tags: [
    { panelId: 'panel:tread', fromMm: 0, toMm: 500, confirmed: true },
    { panelId: 'panel:seat', fromMm: 100, toMm: 500, confirmed: true },
  ],
});

const rear = run('segment:rear', 'node:east', 'node:far');

const panel = (id: Panel['id'], name: string, changes: Partial<Panel>): Panel => ({
  id,
  name,
  kind: 'other',
  area: [],
  minutesOff: 5,
  minutesOn: 6,
  offFirst: [],
  cautions: [],
  note: '',
  order: 0,
  ...changes,
});

const tread = panel('panel:tread', 'Tread plate', { kind: 'sill', minutesOff: 3, minutesOn: 4 });
const seat = panel('panel:seat', 'Front seat', {
  kind: 'seat',
  minutesOff: 15,
  minutesOn: 20,
  offFirst: ['panel:tread'],
  cautions: ['airbag'],
  order: 1,
});

const rubSpot: RubSpot = {
  id: 'rub-spot:edge',
  name: 'Seat rail edge',
  kind: 'raw-edge',
  shape: 'point',
  points: [{ xMm: 750, yMm: 4, zMm: 0 }],
  clearanceMm: null,
  side: 'level',
  severity: 2,
  timesFound: 0,
  note: '',
};

const circuit: Circuit = {
  id: 'circuit:seat-switch',
  name: 'Seat switch',
  wireColours: ['blue', 'white'],
  conductorMm2: 0.35,
  insulation: 'thin-wall',
  duty: 'ordinary',
  fuseA: null,
  path: [
    { segmentId: 'segment:front', reversed: false },
    { segmentId: 'segment:middle', reversed: false },
    { segmentId: 'segment:rear', reversed: false },
  ],
  pins: [],
  ends: [
    { nodeId: 'node:west', kind: 'module-input-pull-up' },
    { nodeId: 'node:far', kind: 'switch-to-ground' },
  ],
  note: '',
  order: 0,
};

const map: MapDocument = {
  ...emptyMap('map:tiny', 'Tiny sample', 'hatch', 'right'),
  nodes: new Map(
    [
      node('node:west', 'Door module', 'module', 0),
      node('node:middle', 'Sill plug', 'inline-connector', 500),
      node('node:east', 'Seat corner', 'branch', 1000),
      node('node:far', 'Seat switch', 'switch', 1500),
    ].map((each) => [each.id, each]),
  ),
  segments: new Map([segment, middle, rear].map((each) => [each.id, each])),
  panels: new Map([tread, seat].map((each) => [each.id, each])),
  rubSpots: new Map([[rubSpot.id, rubSpot]]),
  circuits: new Map([[circuit.id, circuit]]),
};

const laid = layStraight(map, circuit);
if (!laid.ok) throw new Error('the tiny sample does not lie straight');
const line: CircuitLine = laid.value;

const job: Job = {
  format: 'undertrim.job',
  version: 1,
  id: 'job:tiny',
  mapId: 'map:tiny',
  mapRevision: 0,
  openedAt: '2026-01-05T09:00:00Z',
  vehicle: { plate: 'STOCK 1', odometer: 88_000, odometerUnit: 'mi' },
  complaint: 'Seat switch reads pressed',
  failureType: 'circuit-short-to-ground',
  circuitId: 'circuit:seat-switch',
  alsoFailingCircuitIds: [],
  workingCircuitIds: [],
  entries: [],
};

/** An even hazard over the sample circuit, twice as high beside the raw edge (cells 70 to 79). */
const cells = 150;
const perMm = new Float64Array(cells).map((_, cell) => (cell >= 70 && cell < 80 ? 2 : 1));
const field: HazardField = {
  cellEdgesMm: Float64Array.from({ length: cells + 1 }, (_, i) => i * 10),
  byClass: {
    'short-to-ground': perMm,
    'short-to-supply': perMm,
    'wire-to-wire': perMm,
    open: perMm,
    'high-resistance': perMm,
  },
  causes: [
    { cause: 'anywhere', thing: null, figures: {}, firstCell: 0, perMm: new Float64Array(cells).fill(5) },
    {
      cause: 'rub-spot',
      thing: 'rub-spot:edge',
      figures: { rubSpotKind: 'raw-edge' },
      firstCell: 70,
      perMm: new Float64Array(10).fill(5),
    },
  ],
};

export const sample = { map, segment, middle, rear, tread, seat, rubSpot, circuit, line, job, field };
