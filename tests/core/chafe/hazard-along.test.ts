import { describe, expect, test } from 'vitest';
import { causesBetween, massBetween } from '#core/chafe/causes-between.ts';
import { defaultAssumptions } from '#core/chafe/chafe-assumptions.ts';
import { hazardAlong } from '#core/chafe/hazard-along.ts';
import { layStraight } from '#core/circuit/circuit-line.ts';
import { layJoined } from '#core/circuit/joined-wires.ts';
import { faultClasses } from '#core/map/kinds.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Circuit, RubSpot } from '#core/map/records.ts';
import { circuit, clip, mapOf, node, run, spot } from './chafe-map.ts';

const along = (map: MapDocument, assumptions = defaultAssumptions) => {
  const line = layStraight(map, map.circuits.get('circuit:only') as Circuit);
  if (!line.ok) throw new Error('the test map does not lie straight');
  return hazardAlong(map, line.value, assumptions);
};

const sill = (spots: readonly RubSpot[] = [], changes: Partial<Circuit> = {}) =>
  mapOf({
    nodes: [
      node('node:a', 'module', 0),
      node('node:plug', 'inline-connector', 400),
      node('node:b', 'ground-point', 900),
    ],
    runs: [
      run('segment:one', 'node:a', 'node:plug', { clips: [clip('a', 200)] }),
      run('segment:two', 'node:plug', 'node:b', { covering: 'pvc-tape' }),
    ],
    spots,
    circuits: [circuit('only', ['segment:one', 'segment:two'], changes)],
  });

describe('hazard along a traced circuit', () => {
  test('cells are 10 mm of wire or less, rise, and do not straddle the end of a run', () => {
    const { cellEdgesMm } = along(sill());
    expect(cellEdgesMm[0]).toBe(0);
    expect(cellEdgesMm[cellEdgesMm.length - 1]).toBe(900);
    expect(cellEdgesMm).toContain(400);
    for (let i = 1; i < cellEdgesMm.length; i++) {
      const widthMm = (cellEdgesMm[i] as number) - (cellEdgesMm[i - 1] as number);
      expect(widthMm).toBeGreaterThan(0);
      expect(widthMm).toBeLessThanOrEqual(10 + 1e-9);
    }
  });

  test('causes and classes are two cuts of the same sum in every cell', () => {
    const field = along(sill([spot('edge', 650, 8)]));
    const cells = field.cellEdgesMm.length - 1;
    const byCause = new Float64Array(cells);
    for (const { firstCell, perMm } of field.causes) {
      perMm.forEach((density, i) => {
        byCause[firstCell + i] = (byCause[firstCell + i] as number) + density;
      });
    }
    for (let cell = 0; cell < cells; cell++) {
      const byClass = faultClasses.reduce((sum, kind) => sum + (field.byClass[kind][cell] as number), 0);
      expect(byClass / (byCause[cell] as number)).toBeCloseTo(1, 9);
    }
  });

  test('a circuit traced the other way has the same hazard turned round', () => {
    const there = along(sill([spot('edge', 650, 8)]));
    const back = along(
      sill([spot('edge', 650, 8)], {
        path: [
          { segmentId: 'segment:two', reversed: true },
          { segmentId: 'segment:one', reversed: true },
        ],
      }),
    );
    const turned = [...back.byClass.open].reverse();
    turned.forEach((density, i) => {
      expect(density / (there.byClass.open[i] as number)).toBeCloseTo(1, 9);
    });
  });

  test('a spot names itself, its gap, the clip gap and the covering', () => {
    const field = along(sill([spot('edge', 650, 8, { clearanceMm: 4, timesFound: 2 })]));
    const [first] = causesBetween(field, 600, 700);
    expect(first).toMatchObject({
      cause: 'rub-spot',
      thing: 'rub-spot:edge',
      figures: { spanMm: 500, clearanceMm: 4, covering: 'pvc-tape', rubSpotKind: 'raw-edge', timesFound: 2 },
    });
    const shares = causesBetween(field, 0, 900).reduce((sum, { share }) => sum + share, 0);
    expect(shares).toBeGreaterThan(0.999);
    expect(shares).toBeLessThanOrEqual(1 + 1e-9);
  });

  test('a splice passed on the way puts half its hazard on either side; plugs and ends are parts', () => {
    const plugs = along(sill()).causes.filter(({ cause }) => cause === 'joint');
    expect(plugs).toEqual([]);
    const map = sill();
    const spliced = {
      ...map,
      nodes: new Map(map.nodes).set('node:plug', node('node:plug', 'splice', 400)),
    };
    const joints = along(spliced).causes.filter(({ cause }) => cause === 'joint');
    expect(joints.map(({ thing, firstCell, perMm }) => [thing, firstCell, perMm.length])).toEqual([
      ['node:plug', 39, 2],
    ]);
    expect(joints[0]?.perMm.reduce((all, each) => all + each * 10, 0)).toBeCloseTo(0.0007, 12);
  });

  describe('with a second wire spliced to it', () => {
    const branched = (trunkEnds: boolean) => {
      const map = mapOf({
        nodes: [
          node('node:a', 'module', 0),
          node('node:s', 'splice', 400),
          node('node:b', 'load', 900),
          node('node:t', 'splice', 400, 300),
          node('node:c', 'load', 400, 700),
          node('node:d', 'load', 800, 300),
        ],
        runs: [
          run('segment:one', 'node:a', 'node:s'),
          run('segment:two', 'node:s', 'node:b'),
          run('segment:three', 'node:s', 'node:t'),
          run('segment:four', 'node:t', 'node:c'),
          run('segment:five', 'node:t', 'node:d'),
        ],
        circuits: [
          circuit('only', trunkEnds ? ['segment:one'] : ['segment:one', 'segment:two'], {
            ends: [
              { nodeId: 'node:a', kind: 'other' },
              { nodeId: trunkEnds ? 'node:s' : 'node:b', kind: 'other' },
            ],
          }),
          circuit('side', ['segment:three', 'segment:four'], {
            ends: [
              { nodeId: 'node:s', kind: 'other' },
              { nodeId: 'node:c', kind: 'other' },
            ],
          }),
        ],
      });
      const line = layJoined(map, map.circuits.get('circuit:only') as Circuit);
      if (!line.ok) throw new Error('the test map does not lie straight');
      return { field: hazardAlong(map, line.value), line: line.value };
    };
    const jointMass = (trunkEnds: boolean, thing: string) => {
      const { field } = branched(trunkEnds);
      const edges = field.cellEdgesMm;
      const pieces = field.causes.filter((each) => each.cause === 'joint' && each.thing === thing);
      const cells = pieces.flatMap(({ firstCell, perMm }) => [...perMm].map((_, i) => firstCell + i));
      const mass = pieces.reduce((sum, each) => sum + massBetween(edges, each, 0, edges.at(-1) as number), 0);
      return { mass, stations: cells.map((cell) => edges[cell] as number) };
    };

    test('the splice counts once, in equal parts on all wires that meet at it', () => {
      const { mass, stations } = jointMass(false, 'node:s');
      expect(mass).toBeCloseTo(0.0007, 12);
      expect(stations).toEqual([390, 400, 900]);
    });

    test('a splice passed by the second wire counts too', () => {
      const { mass, stations } = jointMass(false, 'node:t');
      expect(mass).toBeCloseTo(0.0007, 12);
      expect(stations).toEqual([1_190, 1_200]);
    });

    test('a splice at which the first wire ends is a joint, not a part', () => {
      const { mass, stations } = jointMass(true, 'node:s');
      expect(mass).toBeCloseTo(0.0007, 12);
      expect(stations).toEqual([390, 400]);
    });
  });

  test('what nobody mapped is listed with the share it is given, the rest keeping its proportions', () => {
    const field = along(sill([spot('edge', 650, 8)]));
    const plain = causesBetween(field, 0, 900);
    expect(plain.some(({ cause }) => cause === 'anywhere')).toBe(false);
    const floored = causesBetween(field, 0, 900, 0.2);
    expect(floored.find(({ cause }) => cause === 'anywhere')?.share).toBeCloseTo(0.2, 9);
    const edge = (shares: typeof plain) => shares.find(({ thing }) => thing === 'rub-spot:edge')?.share ?? 0;
    expect(edge(floored) / edge(plain)).toBeCloseTo(0.8, 9);
  });

  test('what past jobs taught about a kind or a spot raises that kind and that spot alone', () => {
    const map = sill([spot('edge', 650, 8), spot('burr', 100, 9, { kind: 'burr' })]);
    const mass = (assumptions = defaultAssumptions, thing = 'rub-spot:edge') =>
      along(map, assumptions)
        .causes.filter((cause) => cause.thing === thing)
        .reduce((sum, { perMm }) => sum + perMm.reduce((all, each) => all + each, 0), 0);
    const kind = { ...defaultAssumptions, rubSpotKindFactor: { 'raw-edge': 3 } };
    const one = { ...defaultAssumptions, rubSpotFactor: new Map([['rub-spot:edge', 2]]) };
    expect(mass(kind) / mass()).toBeCloseTo(3, 9);
    expect(mass(one) / mass()).toBeCloseTo(2, 9);
    expect(mass(kind, 'rub-spot:burr') / mass(defaultAssumptions, 'rub-spot:burr')).toBeCloseTo(1, 12);
  });

  test('a hinge run mostly opens, a rubbed one mostly shorts', () => {
    const hinge = mapOf({
      nodes: [node('node:a', 'module', 0), node('node:b', 'load', 300)],
      runs: [run('segment:one', 'node:a', 'node:b', { traits: ['crosses-hinge'] })],
      circuits: [circuit('only', ['segment:one'])],
    });
    const sums = (map: MapDocument) => {
      const { byClass } = along(map);
      return {
        open: byClass.open.reduce((sum, each) => sum + each, 0),
        short: byClass['short-to-ground'].reduce((sum, each) => sum + each, 0),
      };
    };
    expect(sums(hinge).open).toBeGreaterThan(3 * sums(hinge).short);
    const rubbed = sill([spot('edge', 650, 4)]);
    expect(sums(rubbed).short).toBeGreaterThan(3 * sums(rubbed).open);
  });

  test('heights keep a spot above the roof away from a loom on the floor', () => {
    const high = (zMm: number, spotZMm: number) => {
      const map = mapOf({
        nodes: [node('node:a', 'module', 0, 0, zMm), node('node:b', 'load', 600, 0, zMm)],
        runs: [run('segment:one', 'node:a', 'node:b')],
        spots: [spot('edge', 300, 4, { points: [{ xMm: 300, yMm: 4, zMm: spotZMm }] })],
        circuits: [circuit('only', ['segment:one'])],
      });
      return causesBetween(along(map), 0, 600).find(({ cause }) => cause === 'rub-spot')?.share ?? 0;
    };
    expect(high(100, 100)).toBeGreaterThan(0.5);
    expect(high(100, 160)).toBeLessThan(0.01);
    // One height missing: the plan view is all there is.
    expect(high(0, 160)).toBeGreaterThan(0.5);
  });
});
