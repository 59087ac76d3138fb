import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { circuitFaults } from '#core/circuit/circuit-faults.ts';
import { type CircuitLine, layStraight } from '#core/circuit/circuit-line.ts';
import { planDistanceMm } from '#core/geometry/point.ts';
import { pointAtStation } from '#core/geometry/station-line.ts';
import { setScale } from '#core/map/commands/set-scale.ts';
import { copyMap } from '#core/map/copy-map.ts';
import { mapToExchange } from '#core/map/exchange.ts';
import { type MapDocument, tableOfKind } from '#core/map/map-document.ts';
import { mapFaults } from '#core/map/map-faults.ts';
import { mirrorMap } from '#core/map/mirror-map.ts';
import { segmentLine } from '#core/map/segment-line.ts';
import { drawFrom } from '#tests/generated/draw.ts';
import { edited } from '#tests/generated/edited.ts';
import { chanceBeside, randomMap } from '#tests/generated/random-map.ts';
import { roundedTo } from '#tests/generated/rounded-to.ts';
import { sample } from '#tests/sample.ts';

const seeds = fc.integer({ min: 0, max: 1_000_000 });
const allIds = (map: MapDocument): string[] =>
  Object.values(tableOfKind).flatMap((name) => [...map[name].keys()] as string[]);

/** Where each clip is in the car. */
function clipPlaces(map: MapDocument) {
  const places = new Map<string, { xMm: number; yMm: number; zMm: number }>();
  for (const segment of map.segments.values()) {
    const line = segmentLine(map, segment);
    if (line) for (const clip of segment.clips) places.set(clip.id, pointAtStation(line, clip.stationMm));
  }
  return places;
}

function circuitLengths(map: MapDocument): readonly number[] {
  return [...map.circuits.values()]
    .map((circuit) => layStraight(map, circuit))
    .flatMap((laid) => (laid.ok ? [(laid.value satisfies CircuitLine).lengthMm] : []));
}

describe('setting the scale', () => {
  test('makes the two points the true distance apart and takes clips along with the drawing', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const map = randomMap(seed);
        const draw = drawFrom(chanceBeside(seed));
        const from = { xMm: draw.between(0, 500), yMm: draw.between(-200, 200) };
        const to = { xMm: draw.between(1_000, 3_000), yMm: draw.between(-200, 200) };
        const factor = draw.between(0.3, 3);
        const distanceMm = planDistanceMm(from, to) * factor;
        const after = edited(map, setScale(map, { from, to, distanceMm }));
        const scale = after.details.scale;
        expect(scale && planDistanceMm(scale.from, scale.to)).toBeCloseTo(distanceMm, 6);
        const now = clipPlaces(after);
        for (const [id, place] of clipPlaces(map)) {
          expect(now.get(id)?.xMm).toBeCloseTo(from.xMm + (place.xMm - from.xMm) * factor, 6);
          expect(now.get(id)?.yMm).toBeCloseTo(from.yMm + (place.yMm - from.yMm) * factor, 6);
          expect(now.get(id)?.zMm).toBeCloseTo(place.zMm, 6);
        }
      }),
      { seed: 51, numRuns: 100 },
    );
  });

  test('keeps what was measured or typed', () => {
    const map = randomMap(4, { runs: 20, rubSpots: 6 });
    const input = { from: { xMm: 0, yMm: 0 }, to: { xMm: 100, yMm: 0 }, distanceMm: 150 };
    const after = edited(map, setScale(map, input));
    const typed = (each: MapDocument) => ({
      measured: [...each.segments.values()].map((run) => [run.measuredLengthMm, run.bundleDiameterMm]),
      clearances: [...each.rubSpots.values()].map((spot) => spot.clearanceMm),
      heights: [...each.nodes.values()].map((node) => node.at.zMm),
    });
    expect(typed(after)).toEqual(typed(map));
    expect(typed(map).measured.some(([length]) => length !== null)).toBe(true);
  });

  test('by two points on top of each other, or by no distance, is refused', () => {
    const at = { xMm: 5, yMm: 5 };
    expect(setScale(sample.map, { from: at, to: at, distanceMm: 5 })).toMatchObject({
      problem: { code: 'same-point' },
    });
    for (const distanceMm of [0, -1, Number.NaN]) {
      expect(setScale(sample.map, { from: at, to: { xMm: 9, yMm: 9 }, distanceMm })).toMatchObject({
        problem: { code: 'bad-value', field: 'distanceMm' },
      });
    }
  });
});

describe('mirroring a map for the other side of drive', () => {
  test('twice gives the same drawing again', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const map = randomMap(seed);
        const ticked = allIds(map);
        const once = mirrorMap(map, { id: 'map:m', ticked }).map;
        const twice = mirrorMap(once, { id: map.id, ticked }).map;
        const checked = { ...map, segments: new Map(map.segments) };
        for (const run of map.segments.values()) checked.segments.set(run.id, { ...run, unchecked: true });
        expect(roundedTo(mapToExchange(twice), 1e-6)).toEqual(roundedTo(mapToExchange(checked), 1e-6));
      }),
      { seed: 53, numRuns: 100 },
    );
  });

  test('of everything keeps every circuit as long as it was and nothing is partly mirrored', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const map = randomMap(seed);
        const mirrored = mirrorMap(map, { id: 'map:m', ticked: allIds(map) });
        expect(mirrored.partlySegmentIds).toEqual([]);
        expect(mirrored.markedSegmentIds.length).toBe(map.segments.size);
        expect(roundedTo(circuitLengths(mirrored.map), 1e-6)).toEqual(roundedTo(circuitLengths(map), 1e-6));
        expect(mirrored.map.details.driveSide).not.toBe(map.details.driveSide);
      }),
      { seed: 54, numRuns: 100 },
    );
  });

  test('of some things leaves the rest, marks each touched run and has no faults', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const map = randomMap(seed);
        const draw = drawFrom(chanceBeside(seed));
        const ticked = new Set(allIds(map).filter(() => draw.happens(0.3)));
        const mirrored = mirrorMap(map, { id: 'map:m', ticked });
        expect(mapFaults(mirrored.map)).toEqual([]);
        for (const run of mirrored.map.segments.values()) {
          const touched = [run.id, run.fromNodeId, run.toNodeId].some((id) => ticked.has(id));
          expect(mirrored.markedSegmentIds.includes(run.id)).toBe(touched);
          if (touched) expect(run.unchecked).toBe(true);
          else expect(run).toBe(map.segments.get(run.id));
        }
      }),
      { seed: 55, numRuns: 100 },
    );
  });
});

describe('copying a map', () => {
  test('with fresh ids shares no id, hangs together and traces the same lengths', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const map = randomMap(seed);
        const copy = copyMap(map, { id: 'map:copy', name: 'Copy', freshIds: chanceBeside(seed) });
        const before = new Set(allIds(map));
        expect(allIds(copy).filter((id) => before.has(id))).toEqual([]);
        expect(allIds(copy).length).toBe(before.size);
        expect(mapFaults(copy)).toEqual([]);
        expect(circuitFaults(copy)).toEqual([]);
        expect(circuitLengths(copy)).toEqual(circuitLengths(map));
      }),
      { seed: 57, numRuns: 100 },
    );
  });
});
