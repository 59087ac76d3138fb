import { describe, expect, test } from 'vitest';
import { guidanceFlags } from '#core/chafe/guidance-flags.ts';
import type { Segment } from '#core/map/records.ts';
import { clip, mapOf, node, onlyRun, run, spot, straightMap } from './chafe-map.ts';

const codes = (lengthMm: number, changes: Partial<Segment> = {}) => {
  const map = straightMap(lengthMm, changes);
  return guidanceFlags(map, onlyRun(map)).map(({ code }) => code);
};

describe('aircraft guidance shown beside a run (AC 43.13-1B chapter 11)', () => {
  test('a span over 24 in is flagged, one of 24 in is not, and a clip mends it', () => {
    expect(codes(650)).toContain('long-span');
    expect(codes(609.6)).not.toContain('long-span');
    expect(codes(650, { clips: [clip('middle', 325)] })).not.toContain('long-span');
    expect(codes(650, { clips: [clip('middle', 325, { missing: true })] })).toContain('long-span');
  });

  test('spare loom that lets it hang over 1/2 in is flagged', () => {
    expect(codes(500)).toEqual([]);
    const map = straightMap(500, { measuredLengthMm: 503 });
    expect(guidanceFlags(map, onlyRun(map)).map(({ code }) => code)).toEqual(['deep-bow']);
  });

  test('a bend under ten diameters is flagged, under three where a clip holds it', () => {
    const bent = (clips: Segment['clips']) => {
      const map = mapOf({
        nodes: [node('node:a', 'module', 0), node('node:b', 'load', 40, 300)],
        runs: [run('segment:only', 'node:a', 'node:b', { bends: [{ xMm: 40, yMm: 0, zMm: 0 }], clips })],
      });
      return guidanceFlags(map, onlyRun(map)).filter(({ code }) => code === 'tight-bend');
    };
    expect(bent([])).toMatchObject([{ stationMm: 40, radiusMm: expect.closeTo(20, 9), supported: false }]);
    // 20 mm is over three diameters of 5.8 mm.
    expect(bent([clip('corner', 42)])).toEqual([]);
  });

  test('a raw edge nearer than 3/8 in is flagged with its gap', () => {
    const near = straightMap(300, {}, [spot('hole', 150, 9, { clearanceMm: 4 })]);
    expect(guidanceFlags(near, onlyRun(near))).toEqual([
      { code: 'narrow-hole', thing: 'rub-spot:hole', gapMm: 4, advisedMm: 9.524999999999999 },
    ]);
    const clear = straightMap(300, {}, [spot('hole', 150, 9, { clearanceMm: 10 })]);
    expect(guidanceFlags(clear, onlyRun(clear))).toEqual([]);
  });
});
