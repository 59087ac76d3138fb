import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { layStraight } from '#core/circuit/circuit-line.ts';
import { bodyDistanceMm } from '#core/geometry/point.ts';
import { pointAtStation } from '#core/geometry/station-line.ts';
import { joinSegments } from '#core/map/commands/join-segments.ts';
import { reverseSegment } from '#core/map/commands/reverse-segment.ts';
import { splitSegment } from '#core/map/commands/split-segment.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Segment } from '#core/map/records.ts';
import { segmentLine } from '#core/map/segment-line.ts';
import { drawFrom } from '#tests/generated/draw.ts';
import { edited } from '#tests/generated/edited.ts';
import { chanceBeside, randomMap } from '#tests/generated/random-map.ts';
import { roundedTo } from '#tests/generated/rounded-to.ts';

const seeds = fc.integer({ min: 0, max: 1_000_000 });

/** A map, a run of it, and the map with that run split somewhere inside. */
function split(seed: number, wishes = {}) {
  const map = randomMap(seed, wishes);
  const draw = drawFrom(chanceBeside(seed));
  const segment = draw.pick([...map.segments.values()]);
  const line = segmentLine(map, segment);
  if (!line) throw new Error('a run without length');
  const stationMm = 1 + draw.chance() * (line.lengthMm - 2);
  const ids = { nodeId: 'node:cut', segmentId: 'segment:beyond' } as const;
  const cut = edited(map, splitSegment(map, { segmentId: segment.id, stationMm, ids }));
  return { map, segment, line, stationMm, cut };
}

/** Where every clip and every end of a tag is in the car, by name. */
function placesOn(map: MapDocument, segments: readonly Segment[]) {
  const clips = new Map<string, { xMm: number; yMm: number; zMm: number }>();
  let hiddenMm = 0;
  for (const segment of segments) {
    const line = segmentLine(map, segment);
    if (!line) continue;
    for (const clip of segment.clips) clips.set(clip.id, pointAtStation(line, clip.stationMm));
    for (const tag of segment.tags) hiddenMm += tag.toMm - tag.fromMm;
  }
  return { clips, hiddenMm };
}

const closeTo = (value: unknown): unknown => roundedTo(value, 1e-6);

describe('splitting a run', () => {
  test('keeps every clip within a millionth of a millimetre of where it was', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { map, segment, cut } = split(seed);
        const before = placesOn(map, [segment]);
        const parts = [cut.segments.get(segment.id), cut.segments.get('segment:beyond')] as Segment[];
        const now = placesOn(cut, parts);
        expect([...now.clips.keys()].sort()).toEqual([...before.clips.keys()].sort());
        for (const [id, place] of before.clips) {
          expect(bodyDistanceMm(place, now.clips.get(id) ?? { xMm: 1e9, yMm: 0, zMm: 0 })).toBeLessThan(1e-6);
        }
        // A sliver of a tag shorter than half a millimetre may go at the cut, no more.
        expect(Math.abs(now.hiddenMm - before.hiddenMm)).toBeLessThan(0.5 * segment.tags.length + 1e-6);
      }),
      { seed: 3, numRuns: 300 },
    );
  });

  test('keeps the length of every circuit', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { map, cut } = split(seed);
        for (const circuit of map.circuits.values()) {
          const before = layStraight(map, circuit);
          const now = layStraight(cut, cut.circuits.get(circuit.id) ?? circuit);
          if (!before.ok) continue;
          expect(now.ok && now.value.lengthMm).toBeCloseTo(before.value.lengthMm, 6);
        }
      }),
      { seed: 4, numRuns: 200 },
    );
  });

  test('and joining again gives the same run', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { map, segment, cut } = split(seed, { smoothShare: 0 });
        const joined = edited(cut, joinSegments(cut, { nodeId: 'node:cut' }));
        expect(closeTo(joined.segments.get(segment.id))).toEqual(closeTo(segment));
        expect(joined.segments.size).toBe(map.segments.size);
        expect([...joined.nodes.keys()]).toEqual([...map.nodes.keys()]);
        for (const circuit of map.circuits.values()) {
          expect(joined.circuits.get(circuit.id)).toEqual(circuit);
        }
      }),
      { seed: 5, numRuns: 300 },
    );
  });

  test('of which the far half was turned round still joins to the same run', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { segment, cut } = split(seed, { smoothShare: 0 });
        const turned = edited(cut, reverseSegment(cut, { segmentId: 'segment:beyond' }));
        const joined = edited(turned, joinSegments(turned, { nodeId: 'node:cut', keepId: segment.id }));
        expect(closeTo(joined.segments.get(segment.id))).toEqual(closeTo(segment));
      }),
      { seed: 6, numRuns: 200 },
    );
  });

  test('of which one half was given another cover is not joined', () => {
    const { segment, cut } = split(1);
    const half = cut.segments.get('segment:beyond') as Segment;
    const covering = half.covering === 'bare' ? 'cloth-tape' : 'bare';
    const changed = { ...cut, segments: new Map(cut.segments).set(half.id, { ...half, covering }) };
    expect(joinSegments(changed, { nodeId: 'node:cut', keepId: segment.id })).toEqual({
      ok: false,
      problem: { code: 'runs-differ', first: segment.id, second: half.id, field: 'covering' },
    });
  });
});

describe('turning a run round', () => {
  test('twice gives the same run, and circuits keep their length', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const map = randomMap(seed);
        const segment = drawFrom(chanceBeside(seed)).pick([...map.segments.values()]);
        const once = edited(map, reverseSegment(map, { segmentId: segment.id }));
        for (const circuit of once.circuits.values()) {
          const before = layStraight(map, map.circuits.get(circuit.id) ?? circuit);
          const now = layStraight(once, circuit);
          expect(now.ok).toBe(before.ok);
          if (now.ok && before.ok) expect(now.value.lengthMm).toBeCloseTo(before.value.lengthMm, 6);
        }
        const twice = edited(once, reverseSegment(once, { segmentId: segment.id }));
        expect(closeTo(twice.segments.get(segment.id))).toEqual(closeTo(segment));
        expect([...twice.circuits.values()]).toEqual([...map.circuits.values()]);
      }),
      { seed: 8, numRuns: 200 },
    );
  });
});
