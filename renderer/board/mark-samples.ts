import type { NodeKind } from '#core/map/kinds.ts';
import { emptyMap, type MapDocument } from '#core/map/map-document.ts';
import type { MapNode, Panel, RubSpot, Segment } from '#core/map/records.ts';
import type { Lit } from './lit.ts';

/** One mark as a tiny drawing, 56 by 28 mm about the origin, so that the key can never differ from the board. */
export interface MarkSample {
  readonly map: MapDocument;
  readonly lit: Lit | null;
}

const blank = emptyMap('map:key', 'Key', 'other', 'right');

const node = (id: MapNode['id'], kind: NodeKind, xMm: number): MapNode => ({
  id,
  name: '',
  kind,
  at: { xMm, yMm: 0, zMm: 0 },
  panelIds: [],
  note: '',
});

const run: Segment = {
  id: 'segment:key',
  name: '',
  routeName: '',
  fromNodeId: 'node:left',
  toNodeId: 'node:right',
  bends: [],
  smooth: false,
  bundleDiameterMm: 3,
  measuredLengthMm: null,
  covering: 'pvc-tape',
  clips: [],
  traits: [],
  tags: [],
  unchecked: false,
  note: '',
};

const runMap = (segment: Segment): MapDocument => ({
  ...blank,
  nodes: new Map([
    ['node:left', node('node:left', 'branch', -400)],
    ['node:right', node('node:right', 'branch', 400)],
  ]),
  segments: new Map([[segment.id, segment]]),
});

/** The run's middle lies at this station. */
const middleMm = 400;

const quietLit: Lit = {
  stretches: new Map(),
  marks: [],
  panelsOff: new Set(),
  circuitSegments: new Set([run.id]),
  pointed: [],
};

export const nodeSample = (kind: NodeKind): MarkSample => ({
  map: { ...blank, nodes: new Map([['node:one', node('node:one', kind, 0)]]) },
  lit: null,
});

export const runSample: MarkSample = { map: runMap(run), lit: null };
export const uncheckedRunSample: MarkSample = { map: runMap({ ...run, unchecked: true }), lit: null };

export const clipSample = (missing: boolean): MarkSample => ({
  map: runMap({ ...run, clips: [{ id: 'clip:key', stationMm: middleMm, kind: 'clip', missing }] }),
  lit: null,
});

export const rubSpotSample = (severity: RubSpot['severity']): MarkSample => ({
  map: {
    ...blank,
    rubSpots: new Map([
      [
        'rub-spot:key',
        {
          id: 'rub-spot:key',
          name: '',
          kind: 'burr',
          shape: 'point',
          points: [{ xMm: 0, yMm: 0, zMm: 0 }],
          clearanceMm: null,
          side: 'level',
          severity,
          timesFound: 0,
          note: '',
        },
      ],
    ]),
  },
  lit: null,
});

const panel: Panel = {
  id: 'panel:key',
  name: '',
  kind: 'other',
  area: [
    { xMm: -22, yMm: -10 },
    { xMm: 22, yMm: -10 },
    { xMm: 22, yMm: 10 },
    { xMm: -22, yMm: 10 },
  ],
  minutesOff: 0,
  minutesOn: 0,
  offFirst: [],
  cautions: [],
  note: '',
  order: 0,
};

export const panelSample = (off: boolean): MarkSample => ({
  map: { ...blank, panels: new Map([[panel.id, panel]]) },
  lit: off ? { ...quietLit, panelsOff: new Set([panel.id]) } : null,
});

/** Three stretches from least to most likely. */
export const likelihoodSample: MarkSample = {
  map: runMap(run),
  lit: {
    ...quietLit,
    stretches: new Map([
      [
        run.id,
        [
          { fromMm: middleMm - 28, toMm: middleMm - 9, level: 0.02 },
          { fromMm: middleMm - 9, toMm: middleMm + 9, level: 0.3 },
          { fromMm: middleMm + 9, toMm: middleMm + 28, level: 1 },
        ],
      ],
    ]),
  },
};

export const cleanSample: MarkSample = {
  map: runMap(run),
  lit: {
    ...quietLit,
    marks: [{ kind: 'clean', segmentId: run.id, fromMm: middleMm - 28, toMm: middleMm + 28 }],
  },
};

export const damagedSample: MarkSample = {
  map: runMap(run),
  lit: {
    ...quietLit,
    marks: [{ kind: 'damaged-not-ours', segmentId: run.id, fromMm: middleMm, toMm: middleMm }],
  },
};

export const foundSample: MarkSample = {
  map: runMap(run),
  lit: { ...quietLit, marks: [{ kind: 'found', segmentId: run.id, atMm: middleMm }] },
};
