import { describe, expect, test } from 'vitest';
import { causesBetween, massBetween } from '#core/chafe/causes-between.ts';
import { defaultAssumptions } from '#core/chafe/chafe-assumptions.ts';
import { hazardAlong } from '#core/chafe/hazard-along.ts';
import { layStraight } from '#core/circuit/circuit-line.ts';
import type { Covering } from '#core/map/kinds.ts';
import { circuit, clip, mapOf, node, run, spot } from './chafe-map.ts';

/**
 * A worked route of 2 m, computed beforehand by a separate program from the same formulas: ten wires of
 * 0.5 mm2; holds at 0, 250, 500, 1000, 1300, 1600, 2000; a burr at 760, 9 mm off; a seat edge from 1100 to
 * 1200, 13 mm off; a bare hole at 1620, 1 mm off; PVC tape to 500, convoluted tube from 1000 to 1600; feet
 * from 600 to 900. Shares of the zones between holds: .022, .839, .015, .025, .100; peak at 760.
 */
const stations = [0, 250, 500, 600, 900, 1000, 1300, 1600, 2000];
const coverAt = (mm: number): Covering =>
  mm < 500 ? 'pvc-tape' : mm >= 1000 && mm < 1600 ? 'convoluted-tube' : 'bare';

const clipped = new Set([250, 500, 1000, 1300, 1600]);
const nodes = stations.map((mm, i) => node(`node:${i}`, mm === 0 || mm === 2000 ? 'module' : 'branch', mm));
const runs = stations.slice(1).map((mm, i) =>
  run(`segment:${i}`, `node:${i}`, `node:${i + 1}`, {
    covering: coverAt((stations[i] as number) + 1),
    clips: clipped.has(mm) ? [clip(`at-${mm}`, mm - (stations[i] as number))] : [],
    traits: stations[i] === 600 ? ['under-feet'] : [],
  }),
);
const radius = 5.842 / 2;
const map = mapOf({
  nodes,
  runs,
  spots: [
    spot('burr', 760, 9, { kind: 'burr' }),
    spot('seat', 1100, 13, {
      kind: 'seat-mount',
      shape: 'line',
      points: [
        { xMm: 1100, yMm: 13, zMm: 0 },
        { xMm: 1200, yMm: 13, zMm: 0 },
      ],
    }),
    spot('hole', 1620, radius + 1, { kind: 'raw-edge' }),
  ],
  circuits: [
    circuit(
      'only',
      runs.map((each) => each.id),
    ),
  ],
});
const line = layStraight(map, map.circuits.get('circuit:only') as never);
if (!line.ok) throw new Error('the route does not lie straight');
// The example knows its gaps to 4 mm, counts no end of a cover, and leaves out what it does not list.
const field = hazardAlong(map, line.value, {
  ...defaultAssumptions,
  planClearanceSigmaMm: 4,
  coverEndMm: 0,
  jointRate: {},
  surfaceSeverity: { ...defaultAssumptions.surfaceSeverity, underfoot: 0.001, clip: 0 },
});
const vibration = field.causes.filter(({ cause }) => cause !== 'anywhere');
const all = vibration.reduce((sum, cause) => sum + massBetween(field.cellEdgesMm, cause, 0, 2000), 0);
const share = (from: number, to: number) =>
  0.95 * (vibration.reduce((sum, cause) => sum + massBetween(field.cellEdgesMm, cause, from, to), 0) / all) +
  (0.05 * (to - from)) / 2000;

describe('the worked 2 m route', () => {
  test.each([
    [0, 500, 0.022],
    [500, 1000, 0.839],
    [1000, 1300, 0.015],
    [1300, 1600, 0.025],
    [1600, 2000, 0.1],
  ])('from %i to %i mm holds its share of the chance', (from, to, expected) => {
    expect(Math.abs(share(from, to) - expected)).toBeLessThan(0.01);
  });

  test('the burr carries most of it', () => {
    const burr = causesBetween(field, 0, 2000).filter(({ thing }) => thing === 'rub-spot:burr');
    expect(burr.reduce((sum, each) => sum + each.share, 0)).toBeCloseTo(0.81, 2);
  });

  test('the likeliest place is at the burr', () => {
    const total = field.byClass['short-to-ground'];
    const peak = total.indexOf(Math.max(...total));
    expect(field.cellEdgesMm[peak]).toBeGreaterThanOrEqual(750);
    expect(field.cellEdgesMm[peak + 1]).toBeLessThanOrEqual(770);
  });
});
