import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bodyDistanceMm } from '#core/geometry/point.ts';
import { pointAtStation } from '#core/geometry/station-line.ts';
import { changeSegment } from '#core/map/commands/change-segment.ts';
import { insertBend } from '#core/map/commands/insert-bend.ts';
import { moveNode } from '#core/map/commands/move-node.ts';
import { moveThings } from '#core/map/commands/move-things.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Segment } from '#core/map/records.ts';
import { segmentLine } from '#core/map/segment-line.ts';
import type { SegmentId } from '#core/quantity/id.ts';
import { drawFrom } from '#tests/generated/draw.ts';
import { edited } from '#tests/generated/edited.ts';
import { chanceBeside, randomMap } from '#tests/generated/random-map.ts';
import { sample } from '#tests/sample.ts';

const seeds = fc.integer({ min: 0, max: 1_000_000 });

function places(map: MapDocument, id: SegmentId) {
  const segment = map.segments.get(id) as Segment;
  const line = segmentLine(map, segment);
  if (!line) throw new Error('a run without length');
  return new Map(segment.clips.map((clip) => [clip.id, pointAtStation(line, clip.stationMm)]));
}

describe('clips and tags stay where they are on the car', () => {
  test('when a bend is put into a straight run on its line', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const map = randomMap(seed, { smoothShare: 0 });
        const draw = drawFrom(chanceBeside(seed));
        const run = draw.pick([...map.segments.values()]);
        const stationMm = draw.chance() * (segmentLine(map, run)?.lengthMm ?? 0);
        const after = edited(map, insertBend(map, { segmentId: run.id, stationMm }));
        const now = places(after, run.id);
        for (const [id, place] of places(map, run.id)) {
          expect(bodyDistanceMm(place, now.get(id) ?? { xMm: 1e9, yMm: 0, zMm: 0 })).toBeLessThan(1e-6);
        }
      }),
      { seed: 71, numRuns: 150 },
    );
  });

  test('when the far node of a run moves off, clips before the last bend do not stir', () => {
    const bends = [{ xMm: 1300, yMm: 0, zMm: 0 }];
    const clips = [{ id: 'clip:n', stationMm: 200, kind: 'clip', missing: false }] as const;
    const run: Segment = { ...sample.rear, bends, clips: [...clips] };
    const map = { ...sample.map, segments: new Map(sample.map.segments).set(run.id, run) };
    const after = edited(map, moveNode(map, { nodeId: 'node:far', at: { xMm: 1400, yMm: 300, zMm: 0 } }));
    expect(after.segments.get('segment:rear')?.clips[0]?.stationMm).toBeCloseTo(200, 9);
  });

  test('a tag that ran to the end of a run still does when the end moves', () => {
    const tags = [{ panelId: 'panel:seat', fromMm: 100, toMm: 500, confirmed: true }] as const;
    const run: Segment = { ...sample.rear, tags: [...tags] };
    const map = { ...sample.map, segments: new Map(sample.map.segments).set(run.id, run) };
    const after = edited(map, moveNode(map, { nodeId: 'node:far', at: { xMm: 1700, yMm: 0, zMm: 0 } }));
    expect(after.segments.get('segment:rear')?.tags).toEqual([{ ...tags[0], toMm: 700 }]);
  });

  test('runs moved whole keep every station', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const map = randomMap(seed);
        const ids = [...map.nodes.keys()];
        const after = edited(map, moveThings(map, { ids, dxMm: 120, dyMm: -35 }));
        for (const run of map.segments.values()) {
          expect(after.segments.get(run.id)?.clips).toEqual(run.clips);
          expect(after.segments.get(run.id)?.tags).toEqual(run.tags);
          const length = segmentLine(map, run)?.lengthMm ?? 0;
          expect(segmentLine(after, after.segments.get(run.id) as Segment)?.lengthMm).toBeCloseTo(length, 6);
        }
      }),
      { seed: 72, numRuns: 60 },
    );
  });
});

describe('what an edit leaves alone', () => {
  test('stays the same list, so that what was worked out from it stays known', () => {
    const map = randomMap(5);
    for (const run of map.segments.values()) {
      const covering = run.covering === 'bare' ? 'convoluted-tube' : 'bare';
      const after = edited(map, changeSegment(map, { segmentId: run.id, changes: { covering } }));
      const now = after.segments.get(run.id) as Segment;
      expect(now.covering).toBe(covering);
      expect(now.bends).toBe(run.bends);
      expect(now.clips).toBe(run.clips);
      expect(now.tags).toBe(run.tags);
    }
  });
});
