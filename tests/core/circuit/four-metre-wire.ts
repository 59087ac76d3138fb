import { type CircuitLine, layStraight } from '#core/circuit/circuit-line.ts';
import { emptyMap, type MapDocument } from '#core/map/map-document.ts';
import type { Circuit, MapNode, Segment } from '#core/map/records.ts';

/** Shape of an invented straight circuit with plugs. */
export interface StraightWire {
  readonly lengthMm: number;
  readonly plugsMm: readonly number[];
  /** Places where the loom branches and the wire runs on: runs of their own on the map. */
  readonly branchesMm?: readonly number[];
  readonly mm2: number;
  readonly ends?: readonly [Circuit['ends'][0]['kind'], Circuit['ends'][0]['kind']];
  /** Trace it from the other end. */
  readonly reversed?: boolean;
}

/**
 * A map that holds one straight circuit: node:module at 0, node:c1, node:c2 … at the plugs, node:b1 … where
 * the loom branches, node:switch at the end.
 */
export function straightWire(shape: StraightWire): { readonly map: MapDocument; readonly line: CircuitLine } {
  const places: { xMm: number; id: MapNode['id']; kind: MapNode['kind'] }[] = [
    { xMm: 0, id: 'node:module', kind: 'module' },
    ...shape.plugsMm.map((xMm, i) => ({ xMm, id: `node:c${i + 1}`, kind: 'inline-connector' }) as const),
    ...(shape.branchesMm ?? []).map((xMm, i) => ({ xMm, id: `node:b${i + 1}`, kind: 'branch' }) as const),
    { xMm: shape.lengthMm, id: 'node:switch', kind: 'switch' },
  ];
  const nodes = places
    .sort((a, b) => a.xMm - b.xMm)
    .map(
      ({ xMm, id, kind }): MapNode => ({
        id,
        name: id,
        kind,
        at: { xMm, yMm: 0, zMm: 0 },
        panelIds: [],
        note: '',
      }),
    );
  const segments = nodes.slice(1).map((to, i): Segment => {
    const id: Segment['id'] = `segment:s${i + 1}`;
    return {
      id,
      name: id,
      routeName: '',
      fromNodeId: (nodes[i] as MapNode).id,
      toNodeId: to.id,
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
    };
  });
  const [first, second] = shape.ends ?? ['module-input-pull-up', 'switch-to-ground'];
  const path = segments.map(({ id }) => ({ segmentId: id, reversed: false }));
  const ends: Circuit['ends'] = [
    { nodeId: 'node:module', kind: first },
    { nodeId: 'node:switch', kind: second },
  ];
  const circuit: Circuit = {
    id: 'circuit:signal',
    name: 'Signal',
    wireColours: [],
    conductorMm2: shape.mm2,
    insulation: 'thin-wall',
    duty: 'ordinary',
    fuseA: null,
    path: shape.reversed ? path.map((step) => ({ ...step, reversed: true })).reverse() : path,
    pins: [],
    ends: shape.reversed ? [ends[1], ends[0]] : ends,
    note: '',
    order: 0,
  };
  const map: MapDocument = {
    ...emptyMap('map:straight', 'Straight', 'other', 'left'),
    nodes: new Map(nodes.map((each) => [each.id, each])),
    segments: new Map(segments.map((each) => [each.id, each])),
    circuits: new Map([[circuit.id, circuit]]),
  };
  const laid = layStraight(map, circuit);
  if (!laid.ok) throw new Error(`the invented wire does not lie straight: ${laid.problem.code}`);
  return { map, line: laid.value };
}

/** 4 m of 0.35 mm2 with plugs at 1.2 and 2.8 m, from a control unit's input to a switch. */
export const fourMetreWire = straightWire({ lengthMm: 4000, plugsMm: [1200, 2800], mm2: 0.35 });

/** Middles of even cells. */
export function cellMiddles(lengthMm: number, count: number): Float64Array {
  return Float64Array.from({ length: count }, (_, i) => ((i + 0.5) * lengthMm) / count);
}

/** Mean and spread along the wire of a log-likelihood under an even prior, in metres. */
export function placeOf(
  stationsMm: Float64Array,
  log: Float64Array,
): { readonly mean: number; readonly sd: number } {
  const top = Math.max(...log);
  let mass = 0;
  let first = 0;
  let second = 0;
  log.forEach((value, i) => {
    const weight = Math.exp(value - top);
    const metres = (stationsMm[i] as number) / 1000;
    mass += weight;
    first += weight * metres;
    second += weight * metres ** 2;
  });
  const mean = first / mass;
  return { mean, sd: Math.sqrt(second / mass - mean ** 2) };
}

/** Length of the smallest set of even cells that holds 80 percent, in metres. */
export function region80(stationsMm: Float64Array, log: Float64Array): number {
  const top = Math.max(...log);
  const weights = [...log].map((value) => Math.exp(value - top)).sort((a, b) => b - a);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  let held = 0;
  let cells = 0;
  for (const weight of weights) {
    if (held >= 0.8 * total) break;
    held += weight;
    cells++;
  }
  return (cells * ((stationsMm[1] as number) - (stationsMm[0] as number))) / 1000;
}
