import fc from 'fast-check';
import polygonClipping from 'polygon-clipping';
import { describe, expect, test } from 'vitest';
import { bendRadiusMm, cornersOf } from '#core/geometry/bend-radius.ts';
import { lineToAreaMm, lineToPathMm } from '#core/geometry/line-distance.ts';
import { nearestBodyStation, nearestStation } from '#core/geometry/nearest-station.ts';
import { cubicAt, flattenOutline } from '#core/geometry/outline-curve.ts';
import { pieceDistanceMm } from '#core/geometry/piece-distance.ts';
import type { BodyPoint, PlanPoint } from '#core/geometry/place.ts';
import { bodyDistanceMm, planDistanceMm } from '#core/geometry/point.ts';
import { distanceToPolygonMm, polygonAreaMm2, polygonContains } from '#core/geometry/polygon.ts';
import { rangesInside } from '#core/geometry/ranges-inside.ts';
import { smoothLine } from '#core/geometry/smooth-line.ts';
import { pointAtStation, stationLine } from '#core/geometry/station-line.ts';

const mm = fc.integer({ min: -3_000, max: 3_000 });
const plan: fc.Arbitrary<PlanPoint> = fc.record({ xMm: mm, yMm: mm });
const body: fc.Arbitrary<BodyPoint> = fc.record({ xMm: mm, yMm: mm, zMm: mm });
const lines = fc
  .array(body, { minLength: 2, maxLength: 8 })
  .filter((points) => stationLine(points).lengthMm > 10);
/** Star-shaped areas: corners by rising angle about the origin, so that they never cross themselves. */
const areas = fc.array(fc.integer({ min: 200, max: 2_500 }), { minLength: 3, maxLength: 9 }).map((radii) =>
  radii.map((radius, i) => ({
    xMm: radius * Math.cos((2 * Math.PI * i) / radii.length),
    yMm: radius * Math.sin((2 * Math.PI * i) / radii.length),
  })),
);

describe('the nearest station of a line', () => {
  test('is a place of the line, and no sampled place is nearer', () => {
    fc.assert(
      fc.property(lines, body, (points, place) => {
        const line = stationLine(points);
        const near = nearestBodyStation(line, place);
        const at = pointAtStation(line, near.stationMm);
        expect(bodyDistanceMm(at, place)).toBeCloseTo(near.distanceMm, 4);
        const inPlan = nearestStation(line, place);
        for (let i = 0; i <= 200; i++) {
          const sampled = pointAtStation(line, (line.lengthMm * i) / 200);
          expect(bodyDistanceMm(sampled, place)).toBeGreaterThanOrEqual(near.distanceMm - 1e-6);
          expect(planDistanceMm(sampled, place)).toBeGreaterThanOrEqual(inPlan.distanceMm - 1e-6);
        }
      }),
      { seed: 81, numRuns: 100 },
    );
  });

  test('goes by the hint where the line passes the place twice', () => {
    const points = [0, 100, 0].map((xMm) => ({ xMm, yMm: 0, zMm: 0 }));
    const line = stationLine(points);
    const place = { xMm: 40, yMm: 0, zMm: 0 };
    expect(nearestBodyStation(line, place, 30).stationMm).toBeCloseTo(40, 9);
    expect(nearestBodyStation(line, place, 170).stationMm).toBeCloseTo(160, 9);
  });
});

describe('areas', () => {
  test('a line is inside over exactly the stretches whose places are inside', () => {
    fc.assert(
      fc.property(lines, areas, (points, corners) => {
        const line = stationLine(points);
        const ranges = rangesInside(line, corners);
        for (let i = 0; i < 150; i++) {
          const stationMm = (line.lengthMm * (i + 0.5)) / 150;
          const place = pointAtStation(line, stationMm);
          const edge = nearEdge(corners, place);
          if (edge < 1e-3) continue;
          const within = ranges.some((range) => range.fromMm <= stationMm && stationMm <= range.toMm);
          expect(within).toBe(polygonContains(corners, place));
        }
        for (let i = 1; i < ranges.length; i++) {
          expect(ranges[i]?.fromMm).toBeGreaterThan(ranges[i - 1]?.toMm ?? 0);
        }
      }),
      { seed: 82, numRuns: 150 },
    );
  });

  test('the length inside agrees with the area a polygon library cuts from a thin strip', () => {
    fc.assert(
      fc.property(plan, plan, areas, (a, b, corners) => {
        const length = planDistanceMm(a, b);
        fc.pre(length > 100);
        const width = 0.01;
        const nx = (-(b.yMm - a.yMm) / length) * (width / 2);
        const ny = ((b.xMm - a.xMm) / length) * (width / 2);
        const strip: [number, number][] = [
          [a.xMm + nx, a.yMm + ny],
          [b.xMm + nx, b.yMm + ny],
          [b.xMm - nx, b.yMm - ny],
          [a.xMm - nx, a.yMm - ny],
        ];
        const ring = corners.map(({ xMm, yMm }): [number, number] => [xMm, yMm]);
        const cut = polygonClipping.intersection([strip], [ring]);
        const cutMm2 = cut.reduce(
          (sum, [outer]) => sum + Math.abs(polygonAreaMm2((outer ?? []).map(([xMm, yMm]) => ({ xMm, yMm })))),
          0,
        );
        const line = stationLine([a, b].map((point) => ({ ...point, zMm: 0 })));
        const insideMm = rangesInside(line, corners).reduce((sum, r) => sum + r.toMm - r.fromMm, 0);
        expect(Math.abs(insideMm - cutMm2 / width)).toBeLessThan(2);
      }),
      { seed: 83, numRuns: 150 },
    );
  });

  test('distance is zero inside and as to the nearest edge outside', () => {
    const square = [
      { xMm: 0, yMm: 0 },
      { xMm: 10, yMm: 0 },
      { xMm: 10, yMm: 10 },
      { xMm: 0, yMm: 10 },
    ];
    expect(distanceToPolygonMm(square, { xMm: 5, yMm: 5 })).toBe(0);
    expect(distanceToPolygonMm(square, { xMm: 13, yMm: 14 })).toBe(5);
    expect(
      lineToAreaMm(
        [
          { xMm: -5, yMm: 5 },
          { xMm: 20, yMm: 5 },
        ],
        square,
      ),
    ).toBe(0);
    expect(
      lineToAreaMm(
        [
          { xMm: 4, yMm: 4 },
          { xMm: 6, yMm: 6 },
        ],
        square,
      ),
    ).toBe(0);
    expect(
      lineToAreaMm(
        [
          { xMm: -5, yMm: 13 },
          { xMm: 20, yMm: 13 },
        ],
        square,
      ),
    ).toBe(3);
  });
});

function nearEdge(corners: readonly PlanPoint[], place: PlanPoint): number {
  const ring = [...corners, corners[0] as PlanPoint];
  return lineToPathMm(
    ring.map((corner) => ({ xMm: corner.xMm, yMm: corner.yMm, zMm: 0 })),
    [{ xMm: place.xMm, yMm: place.yMm, zMm: 0 }],
    false,
  );
}

describe('the distance between two straight pieces', () => {
  test('is the same both ways round and no sampled pair is nearer', () => {
    fc.assert(
      fc.property(body, body, body, body, (a, b, c, d) => {
        const apart = pieceDistanceMm(a, b, c, d);
        expect(pieceDistanceMm(d, c, b, a)).toBeCloseTo(apart, 6);
        let sampled = Number.POSITIVE_INFINITY;
        const at = (p: BodyPoint, q: BodyPoint, s: number): BodyPoint => ({
          xMm: p.xMm + (q.xMm - p.xMm) * s,
          yMm: p.yMm + (q.yMm - p.yMm) * s,
          zMm: p.zMm + (q.zMm - p.zMm) * s,
        });
        for (let i = 0; i <= 40; i++) {
          for (let j = 0; j <= 40; j++) {
            sampled = Math.min(sampled, bodyDistanceMm(at(a, b, i / 40), at(c, d, j / 40)));
          }
        }
        expect(apart).toBeLessThanOrEqual(sampled + 1e-6);
        // Half a sample step on each piece bounds how far the best pair can be missed by.
        const step = (bodyDistanceMm(a, b) + bodyDistanceMm(c, d)) / 80;
        expect(sampled).toBeLessThanOrEqual(apart + step + 1e-6);
      }),
      { seed: 84, numRuns: 60 },
    );
  });
});

describe('bend radius', () => {
  test('of a line drawn along a circle is the circle', () => {
    for (const radius of [20, 80, 400]) {
      const points = Array.from({ length: 721 }, (_, i) => ({
        xMm: radius * Math.cos((Math.PI * i) / 720),
        yMm: radius * Math.sin((Math.PI * i) / 720),
        zMm: 50,
      }));
      const line = stationLine(points);
      for (const share of [0, 0.3, 0.5, 1]) {
        expect(bendRadiusMm(line, line.lengthMm * share, radius / 4) / radius).toBeCloseTo(1, 3);
      }
    }
  });

  test('of a straight line is unbounded, of a sharper corner smaller', () => {
    const corner = (turn: number) =>
      stationLine([
        { xMm: -100, yMm: 0, zMm: 0 },
        { xMm: 0, yMm: 0, zMm: 0 },
        { xMm: 100 * Math.cos(turn), yMm: 100 * Math.sin(turn), zMm: 0 },
      ]);
    expect(bendRadiusMm(corner(0), 100, 30)).toBe(Number.POSITIVE_INFINITY);
    expect(cornersOf(corner(0), 30)[0]?.radiusMm).toBe(Number.POSITIVE_INFINITY);
    let wider = Number.POSITIVE_INFINITY;
    for (const turn of [0.3, 0.8, 1.5, 2.4, 3]) {
      const radius = bendRadiusMm(corner(turn), 100, 30);
      const cut = cornersOf(corner(turn), 30)[0];
      expect(radius).toBeLessThan(wider);
      expect(cut?.radiusMm).toBeCloseTo(30 / Math.tan(turn / 2), 9);
      expect(cut?.turnRad).toBeCloseTo(turn, 9);
      wider = radius;
    }
  });

  test('of a rounded right angle is that of the parabola at its tip, within what 12 chords can show', () => {
    // Quadratic arc with legs h and a right angle: least radius h / sqrt(2), at the middle.
    const legs = [
      { xMm: -200, yMm: 0, zMm: 0 },
      { xMm: 0, yMm: 0, zMm: 0 },
      { xMm: 0, yMm: 200, zMm: 0 },
    ];
    const line = stationLine(smoothLine(legs));
    const tip = bendRadiusMm(line, line.lengthMm / 2, 20);
    expect(Math.abs(tip / (100 / Math.SQRT2) - 1)).toBeLessThan(0.07);
  });
});

describe('a bent outline edge', () => {
  test('flattened stays within its tolerance of the curve', () => {
    fc.assert(
      fc.property(plan, plan, plan, plan, fc.constantFrom(0.5, 2, 10), (a, b, c, d, tolerance) => {
        const reach = (from: PlanPoint, to: PlanPoint) => ({
          dxMm: to.xMm - from.xMm,
          dyMm: to.yMm - from.yMm,
        });
        const flat = flattenOutline(
          [
            { ...a, handleOut: reach(a, b) },
            { ...d, handleIn: reach(d, c) },
          ],
          false,
          tolerance,
        ).map((point) => ({ ...point, zMm: 0 }));
        expect(flat.length).toBeLessThan(202);
        for (let i = 0; i <= 60; i++) {
          const on = cubicAt(a, b, c, d, i / 60);
          const off = lineToPathMm(flat, [{ ...on, zMm: 0 }], false);
          expect(off).toBeLessThanOrEqual(tolerance + 1e-6);
        }
      }),
      { seed: 85, numRuns: 100 },
    );
  });
});
