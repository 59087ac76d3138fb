import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type ChafeAssumptions, defaultAssumptions } from '#core/chafe/chafe-assumptions.ts';
import { hazardAlong } from '#core/chafe/hazard-along.ts';
import type { HazardField } from '#core/chafe/hazard-field.ts';
import { segmentHazard, wholeHazard } from '#core/chafe/segment-hazard.ts';
import { layStraight } from '#core/circuit/circuit-line.ts';
import type { BodyPoint } from '#core/geometry/place.ts';
import { coverings, faultClasses, rubSpotKinds, segmentTraits } from '#core/map/kinds.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Circuit, RubSpot, Segment } from '#core/map/records.ts';
import { randomMap } from '#tests/generated/random-map.ts';
import { circuit, clip, mapOf, node, run, spot } from './chafe-map.ts';

/** Three runs end to end with clips, bends and spots drawn at random, and one circuit along them. */
const anyRun = fc.record({
  lengthMm: fc.integer({ min: 60, max: 900 }),
  clips: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 4 }),
  covering: fc.constantFrom(...coverings),
  traits: fc.uniqueArray(fc.constantFrom(...segmentTraits), { maxLength: 2 }),
  sideMm: fc.integer({ min: -60, max: 60 }),
  spareMm: fc.constantFrom(0, 0, 3, 20),
  node: fc.constantFrom('branch', 'inline-connector', 'grommet', 'splice'),
});
const anySpot = fc.record({
  along: fc.double({ min: 0, max: 1, noNaN: true }),
  offMm: fc.integer({ min: -60, max: 60 }),
  kind: fc.constantFrom(...rubSpotKinds),
  clearanceMm: fc.oneof(fc.constant(null), fc.integer({ min: 0, max: 25 })),
  side: fc.constantFrom('below', 'level', 'above'),
  severity: fc.constantFrom(1, 2, 3),
  lineMm: fc.constantFrom(0, 0, 80),
});
const anyMap = fc
  .tuple(fc.array(anyRun, { minLength: 3, maxLength: 3 }), fc.array(anySpot, { maxLength: 4 }))
  .map(([runs, spots]) => {
    const stations = [0];
    for (const each of runs) stations.push((stations[stations.length - 1] as number) + each.lengthMm);
    const lengthMm = stations[3] as number;
    const nodes = stations.map((mm, i) =>
      node(`node:${i}`, i === 0 ? 'fuse-box' : i === 3 ? 'load' : (runs[i - 1]?.node ?? 'branch'), mm),
    );
    const segments = runs.map((each, i) => {
      const from = stations[i] as number;
      return run(`segment:${i}`, `node:${i}`, `node:${i + 1}`, {
        bends: each.sideMm === 0 ? [] : [{ xMm: from + each.lengthMm / 2, yMm: each.sideMm, zMm: 0 }],
        smooth: each.sideMm > 0,
        clips: each.clips.map((share, k) => clip(`${i}-${k}`, share * each.lengthMm)),
        covering: each.covering,
        traits: each.traits,
        measuredLengthMm: each.spareMm === 0 ? null : each.lengthMm + 40 + each.spareMm,
      });
    });
    const marks = spots.map((each, i) => rubSpot(each, `${i}`, lengthMm));
    return mapOf({
      nodes,
      runs: segments,
      spots: marks,
      circuits: [circuit('only', ['segment:0', 'segment:1', 'segment:2'])],
    });
  });

type AnySpot = typeof anySpot extends fc.Arbitrary<infer T> ? T : never;
function rubSpot(each: AnySpot, name: string, lengthMm: number): RubSpot {
  const xMm = each.along * lengthMm;
  const points = [{ xMm, yMm: each.offMm, zMm: 0 }];
  if (each.lineMm > 0) points.push({ xMm: xMm + each.lineMm, yMm: each.offMm, zMm: 0 });
  return spot(name, xMm, each.offMm, {
    kind: each.kind,
    clearanceMm: each.clearanceMm,
    side: each.side as RubSpot['side'],
    severity: each.severity as RubSpot['severity'],
    shape: each.lineMm > 0 ? 'line' : 'point',
    points,
  });
}

function fieldOf(map: MapDocument, assumptions: ChafeAssumptions = defaultAssumptions): HazardField {
  const line = layStraight(map, map.circuits.get('circuit:only') as Circuit);
  if (!line.ok) throw new Error('the test map does not lie straight');
  return hazardAlong(map, line.value, assumptions);
}

function totals(field: HazardField): number[] {
  const cells = field.cellEdgesMm.length - 1;
  return Array.from({ length: cells }, (_, cell) =>
    faultClasses.reduce((sum, kind) => sum + (field.byClass[kind][cell] as number), 0),
  );
}

function mass(field: HazardField): number {
  return totals(field).reduce(
    (sum, density, i) =>
      sum + density * ((field.cellEdgesMm[i + 1] as number) - (field.cellEdgesMm[i] as number)),
    0,
  );
}

/** The smallest ratio of two lists of densities, cell by cell. */
function leastRatio(after: readonly number[], before: readonly number[]): number {
  let least = Number.POSITIVE_INFINITY;
  after.forEach((density, cell) => {
    const was = before[cell] ?? 0;
    if (was > 0) least = Math.min(least, density / was);
  });
  return least;
}

function expectNowhereLower(after: MapDocument, before: MapDocument): void {
  expect(leastRatio(totals(fieldOf(after)), totals(fieldOf(before)))).toBeGreaterThanOrEqual(1 - 1e-9);
}

const withRuns = (map: MapDocument, change: (segment: Segment) => Segment): MapDocument => ({
  ...map,
  segments: new Map([...map.segments].map(([id, segment]) => [id, change(segment)])),
});
const withSpots = (map: MapDocument, change: (each: RubSpot) => RubSpot): MapDocument => ({
  ...map,
  rubSpots: new Map([...map.rubSpots].map(([id, each]) => [id, change(each)])),
});
const runs = { seed: 77, numRuns: 100 };

describe('hazard along a circuit', () => {
  test('adding a rub spot lowers it nowhere', () => {
    fc.assert(
      fc.property(anyMap, anySpot, (map, extra) => {
        const lengthMm = (map.nodes.get('node:3')?.at.xMm ?? 0) as number;
        const more = rubSpot(extra, 'more', lengthMm);
        expectNowhereLower({ ...map, rubSpots: new Map([...map.rubSpots, [more.id, more]]) }, map);
      }),
      runs,
    );
  });

  test('adding a rub spot never lowers the share of its own stretch', () => {
    fc.assert(
      fc.property(anyMap, anySpot, (map, extra) => {
        const lengthMm = (map.nodes.get('node:3')?.at.xMm ?? 0) as number;
        const more = rubSpot({ ...extra, lineMm: 0 }, 'more', lengthMm);
        const before = fieldOf(map);
        const after = fieldOf({ ...map, rubSpots: new Map([...map.rubSpots, [more.id, more]]) });
        const added = new Array<number>(totals(after).length).fill(0);
        for (const cause of after.causes.filter(({ thing }) => thing === more.id)) {
          cause.perMm.forEach((density, i) => {
            added[cause.firstCell + i] = (added[cause.firstCell + i] as number) + density;
          });
        }
        const peak = Math.max(...added);
        const share = (field: HazardField) => {
          let sum = 0;
          totals(field).forEach((density, i) => {
            const widthMm = (field.cellEdgesMm[i + 1] as number) - (field.cellEdgesMm[i] as number);
            if ((added[i] as number) > peak * 1e-9) sum += density * widthMm;
          });
          return sum / mass(field);
        };
        expect(share(after)).toBeGreaterThanOrEqual(share(before) * (1 - 1e-7));
      }),
      runs,
    );
  });

  test('a weaker covering lowers it nowhere', () => {
    // From the weakest to the strongest.
    const order = [
      'bare',
      'pvc-tape',
      'fleece-tape',
      'pvc-tube',
      'cloth-tape',
      'convoluted-tube',
      'braided-sleeve',
    ] as const;
    fc.assert(
      fc.property(anyMap, fc.integer({ min: 1, max: 3 }), (map, steps) => {
        const weaker = withRuns(map, (segment) => ({
          ...segment,
          covering: order[Math.max(0, order.indexOf(segment.covering) - steps)] ?? 'bare',
        }));
        expectNowhereLower(weaker, map);
      }),
      runs,
    );
  });

  test('a thinner wall lowers it nowhere', () => {
    fc.assert(
      fc.property(anyMap, (map) => {
        const line = layStraight(map, map.circuits.get('circuit:only') as Circuit);
        if (!line.ok) throw new Error('does not lie straight');
        const wired = (insulation: Circuit['insulation']) =>
          totals(hazardAlong(map, { ...line.value, circuit: { ...line.value.circuit, insulation } }));
        const thick = wired('thick-wall');
        expect(leastRatio(wired('thin-wall'), thick)).toBeGreaterThanOrEqual(1);
      }),
      runs,
    );
  });

  test('a sharper edge, a smaller clearance or a spot that sag reaches lowers it nowhere', () => {
    fc.assert(
      fc.property(anyMap, fc.integer({ min: 0, max: 10 }), (map, lessMm) => {
        expectNowhereLower(
          withSpots(map, (each) => ({ ...each, severity: 3 })),
          map,
        );
        expectNowhereLower(
          withSpots(map, (each) =>
            each.clearanceMm === null
              ? each
              : { ...each, clearanceMm: Math.max(0, each.clearanceMm - lessMm) },
          ),
          map,
        );
        expectNowhereLower(
          withSpots(map, (each) => ({ ...each, side: each.side === 'above' ? 'level' : 'below' })),
          map,
        );
      }),
      runs,
    );
  });

  test('more spare loom, wet or heat lowers it nowhere', () => {
    fc.assert(
      fc.property(
        anyMap,
        fc.constantFrom('wet', 'hot', 'under-feet', 'slides-with-seat', 'drawn-tight'),
        (map, trait) => {
          expectNowhereLower(
            withRuns(map, (segment) => ({
              ...segment,
              traits: [...new Set([...segment.traits, trait] as const)],
            })),
            map,
          );
        },
      ),
      runs,
    );
  });

  test('a clip gone lowers what rubs on body and spots nowhere', () => {
    fc.assert(
      fc.property(anyMap, (map) => {
        for (const segment of map.segments.values()) {
          const gone = { ...segment, clips: segment.clips.slice(1) };
          const rubbed = (each: Segment) => {
            const perCell: number[] = [];
            for (const cause of segmentHazard(map, each)?.causes ?? []) {
              if (cause.cause !== 'bare-body' && cause.cause !== 'rub-spot') continue;
              for (let i = 0; i < cause.perMm.length; i++) {
                const cell = cause.firstCell + i;
                perCell[cell] = (perCell[cell] ?? 0) + (cause.perMm[i] as number);
              }
            }
            return perCell;
          };
          const held = rubbed(segment);
          // Motion left at a clip is a share of its span's, which allows a rise of a few parts in 1e5.
          expect(leastRatio(rubbed(gone), held)).toBeGreaterThanOrEqual(1 - 1e-3);
        }
      }),
      runs,
    );
  });

  test('mirroring and moving the whole drawing change nothing', () => {
    fc.assert(
      fc.property(anyMap, fc.double({ min: -3, max: 3, noNaN: true }), fc.boolean(), (map, turn, mirror) => {
        const moved = (p: BodyPoint): BodyPoint => {
          const y = mirror ? -p.yMm : p.yMm;
          return {
            xMm: 300 + p.xMm * Math.cos(turn) - y * Math.sin(turn),
            yMm: -120 + p.xMm * Math.sin(turn) + y * Math.cos(turn),
            zMm: p.zMm,
          };
        };
        const all: MapDocument = {
          ...withSpots(
            withRuns(map, (segment) => ({ ...segment, bends: segment.bends.map(moved) })),
            (each) => ({ ...each, points: each.points.map(moved) }),
          ),
          nodes: new Map([...map.nodes].map(([id, each]) => [id, { ...each, at: moved(each.at) }])),
        };
        const before = fieldOf(map);
        expect(mass(fieldOf(all)) / mass(before)).toBeCloseTo(1, 6);
        const after = totals(fieldOf(all));
        expect(leastRatio(after, totals(before))).toBeGreaterThan(1 - 1e-5);
        expect(leastRatio(totals(before), after)).toBeGreaterThan(1 - 1e-5);
      }),
      runs,
    );
  });

  test('finer cells change the whole by under 1 percent', () => {
    fc.assert(
      fc.property(anyMap, (map) => {
        const fine = mass(fieldOf(map, { ...defaultAssumptions, longestCellMm: 2 }));
        expect(Math.abs(mass(fieldOf(map)) / fine - 1)).toBeLessThan(0.01);
      }),
      runs,
    );
  });

  test('splitting a run at a branch changes the whole by under 1 percent', () => {
    fc.assert(
      fc.property(anyMap, fc.double({ min: 0.1, max: 0.9, noNaN: true }), (map, share) => {
        const whole = map.segments.get('segment:1') as Segment;
        const straight = { ...whole, bends: [], measuredLengthMm: null };
        const from = map.nodes.get('node:1')?.at.xMm ?? 0;
        const lengthMm = (map.nodes.get('node:2')?.at.xMm ?? 0) - from;
        const cut = share * lengthMm;
        const first: Segment = {
          ...straight,
          toNodeId: 'node:cut',
          clips: straight.clips.filter((each) => each.stationMm < cut),
        };
        const second: Segment = {
          ...straight,
          id: 'segment:cut',
          fromNodeId: 'node:cut',
          clips: straight.clips
            .filter((each) => each.stationMm >= cut)
            .map((each) => ({ ...each, stationMm: each.stationMm - cut })),
        };
        const one: MapDocument = { ...map, segments: new Map(map.segments).set(straight.id, straight) };
        const cutNode = node('node:cut', 'branch', from + cut);
        const two: MapDocument = {
          ...map,
          nodes: new Map(map.nodes).set(cutNode.id, cutNode),
          segments: new Map(map.segments).set(first.id, first).set(second.id, second),
          circuits: new Map([
            [
              'circuit:only' as const,
              circuit('only', ['segment:0', 'segment:1', 'segment:cut', 'segment:2']),
            ],
          ]),
        };
        // A run that bends or counts per run (a hinge) is one thing; splitting it makes two.
        if (straight.traits.includes('crosses-hinge')) return;
        // The segment with the same circuit keeps its wires: the cut run carries it too.
        expect(Math.abs(mass(fieldOf(two)) / mass(fieldOf(one)) - 1)).toBeLessThan(0.01);
      }),
      runs,
    );
  });
});

describe('what if', () => {
  test('a sleeve or an extra clip lowers the hazard of a run with a spot in the middle', () => {
    const map = mapOf({
      nodes: [node('node:a', 'module', 0), node('node:b', 'load', 600)],
      runs: [run('segment:only', 'node:a', 'node:b')],
      spots: [spot('edge', 300, 9)],
    });
    const now = map.segments.get('segment:only') as Segment;
    const whole = (segment: Segment) => {
      const hazard = segmentHazard(map, segment);
      if (!hazard) throw new Error('the run has a shape');
      return wholeHazard(hazard);
    };
    expect(whole({ ...now, covering: 'braided-sleeve' })).toBeLessThan(0.3 * whole(now));
    expect(whole({ ...now, clips: [clip('more', 300)] })).toBeLessThan(0.5 * whole(now));
    expect(whole({ ...now, clips: [clip('more', 300, { missing: true })] })).toBe(whole(now));
  });
});

describe('invented cars', () => {
  test('the hazard of every cause is a number and never below nothing, however the loom doubles back', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 10_000 }), (seed) => {
        const car = randomMap(seed);
        for (const segment of car.segments.values()) {
          for (const { perMm } of segmentHazard(car, segment)?.causes ?? []) {
            for (let i = 0; i < perMm.length; i++) {
              expect(Number.isFinite(perMm[i])).toBe(true);
              expect(perMm[i]).toBeGreaterThanOrEqual(0);
            }
          }
        }
      }),
      { seed: 13, numRuns: 60 },
    );
  });
});
