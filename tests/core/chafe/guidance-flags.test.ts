import { describe, expect, test } from 'vitest';
import { guidanceSources } from '#core/chafe/aircraft-guidance.ts';
import { guidanceFlags } from '#core/chafe/guidance-flags.ts';
import type { Segment } from '#core/map/records.ts';
import { circuit, clip, mapOf, node, onlyRun, run, spot, straightMap } from './chafe-map.ts';

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
    expect(codes(300)).toEqual([]);
    expect(codes(300, { measuredLengthMm: 303 })).toEqual(['deep-bow']);
  });

  test('a bend under ten diameters is flagged, under three where a clip holds it', () => {
    const bent = (clips: Segment['clips']) => {
      const map = mapOf({
        nodes: [node('node:a', 'module', 0), node('node:b', 'load', 40, 300)],
        runs: [run('segment:only', 'node:a', 'node:b', { bends: [{ xMm: 40, yMm: 0, zMm: 0 }], clips })],
      });
      return guidanceFlags(map, onlyRun(map)).filter(({ code }) => code === 'tight-bend');
    };
    expect(bent([])).toMatchObject([
      { atMm: 40, mm: expect.closeTo(20, 9), advisedMm: expect.closeTo(58.42, 2) },
    ]);
    // 20 mm is over three diameters of 5.8 mm.
    expect(bent([clip('corner', 42)])).toEqual([]);
  });

  test('a raw edge nearer than 3/8 in is flagged with its gap', () => {
    const near = straightMap(300, {}, [spot('hole', 150, 9, { clearanceMm: 4 })]);
    expect(guidanceFlags(near, onlyRun(near))).toEqual([
      { code: 'narrow-hole', thing: 'rub-spot:hole', atMm: null, mm: 4, advisedMm: expect.closeTo(9.525, 9) },
    ]);
    const clear = straightMap(300, {}, [spot('hole', 150, 9, { clearanceMm: 10 })]);
    expect(guidanceFlags(clear, onlyRun(clear))).toEqual([]);
  });

  test('a loom against something with only its cover between is flagged, but not what merely crosses in plan', () => {
    const codesBeside = (
      changes: Parameters<typeof spot>[3],
      covering: Segment['covering'] = 'cloth-tape',
    ) => {
      const map = straightMap(300, { covering }, [spot('post', 150, 0, { kind: 'bracket', ...changes })]);
      return guidanceFlags(map, onlyRun(map)).map(({ code }) => code);
    };
    expect(codesBeside({ clearanceMm: 0 })).toEqual(['cover-only']);
    expect(codesBeside({ clearanceMm: 5 })).toEqual([]);
    expect(codesBeside({ clearanceMm: null })).toEqual([]);
    expect(codesBeside({ clearanceMm: 0 }, 'bare')).toEqual([]);
  });

  test('a part that moves nearer than 1/2 in is flagged', () => {
    const beside = (clearanceMm: number) => {
      const map = straightMap(300, {}, [spot('arm', 150, 20, { kind: 'moving-part', clearanceMm })]);
      return guidanceFlags(map, onlyRun(map)).map(({ code }) => code);
    };
    expect(beside(12)).toEqual(['near-moving']);
    expect(beside(13)).toEqual([]);
  });

  test('tape and ties alone hold nothing up, and one real fixing does', () => {
    const tie = clip('tie', 100, { kind: 'tie' });
    expect(codes(300, { clips: [tie] })).toEqual(['tied-only']);
    expect(codes(300, { clips: [tie, clip('real', 200)] })).toEqual([]);
    expect(codes(300, { clips: [tie, clip('gone', 200, { missing: true })] })).toEqual(['tied-only']);
  });

  test('bare wires over more than 12 in between fixings are to be tied together, covered ones are', () => {
    expect(codes(310)).toEqual(['untied-span']);
    expect(codes(310, { covering: 'pvc-tape' })).toEqual([]);
    expect(codes(310, { clips: [clip('middle', 155)] })).toEqual([]);
  });

  test('a run under people’s feet is flagged', () => {
    expect(codes(300, { traits: ['under-feet'] })).toEqual(['underfoot']);
  });

  test('a wet loom that comes down into a plug without a dip is flagged at that plug', () => {
    const dripping = (lowZMm: number) => {
      const map = mapOf({
        nodes: [node('node:a', 'branch', 0, 0, 300), node('node:b', 'module', 300, 0, 100)],
        runs: [
          run('segment:only', 'node:a', 'node:b', {
            traits: ['wet'],
            covering: 'pvc-tape',
            clips: [clip('a', 150)],
            bends: [{ xMm: 200, yMm: 0, zMm: lowZMm }],
          }),
        ],
      });
      return guidanceFlags(map, onlyRun(map)).filter(({ code }) => code === 'no-drip-loop');
    };
    expect(dripping(150)).toMatchObject([{ thing: 'node:b' }]);
    expect(dripping(60)).toEqual([]);
    // Nothing is said where nobody drew heights.
    expect(codes(300, { traits: ['wet'] })).toEqual([]);
  });

  test('a splice within 12 in of a plug, and a second splice before the next plug, are flagged', () => {
    const spliced = (lengthMm: number, middle: 'splice' | 'inline-connector') => {
      const map = mapOf({
        nodes: [
          node('node:a', 'module', 0),
          node('node:s', 'splice', lengthMm),
          node('node:m', middle, lengthMm + 400),
          node('node:b', 'load', lengthMm + 800),
        ],
        runs: [
          run('segment:only', 'node:a', 'node:s', { covering: 'pvc-tape' }),
          run('segment:two', 'node:m', 'node:s', { covering: 'pvc-tape' }),
          run('segment:three', 'node:m', 'node:b', { covering: 'pvc-tape' }),
        ],
        circuits: [
          circuit('only', [], {
            path: [
              { segmentId: 'segment:only', reversed: false },
              { segmentId: 'segment:two', reversed: true },
              { segmentId: 'segment:three', reversed: false },
            ],
          }),
        ],
      });
      return [...map.segments.values()].map((each) =>
        guidanceFlags(map, each)
          .filter(({ code }) => code.includes('splice'))
          .map(({ code, thing }) => `${code} ${thing}`),
      );
    };
    const twice = 'many-splices circuit:only';
    expect(spliced(200, 'splice')).toEqual([['splice-near-end node:s', twice], [twice], [twice]]);
    expect(spliced(400, 'inline-connector')).toEqual([[], [], []]);
  });

  test('each says where it stands, and says from memory where no paragraph is remembered', () => {
    for (const { place, fromMemory } of Object.values(guidanceSources)) {
      expect(place === null).toBe(fromMemory);
    }
  });
});
