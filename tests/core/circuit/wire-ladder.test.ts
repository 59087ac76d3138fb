import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { layLadder, placesOnLadder, wireOhmsTo } from '#core/circuit/wire-ladder.ts';
import { fourMetreWire, straightWire } from './four-metre-wire.ts';

describe('a traced circuit as a row of links', () => {
  test('wire and plugs alternate and add up', () => {
    const ladder = layLadder(fourMetreWire.map, fourMetreWire.line, []);
    expect(ladder.links.map(({ kind }) => kind)).toEqual(['wire', 'plug', 'wire', 'plug', 'wire']);
    const total = ladder.links.reduce((sum, { ohms }) => sum + ohms, 0);
    expect(total).toBeCloseTo(4 * 0.0544 + 2 * 0.005, 12);
  });

  test('where a lead may sit does not change the ohms, however many places there are', () => {
    const { map, line } = fourMetreWire;
    const all = layLadder(
      map,
      line,
      line.nodes.map(({ nodeId }) => nodeId),
    );
    const none = layLadder(map, line, []);
    expect(wireOhmsTo(all, 3000)).toBe(wireOhmsTo(none, 3000));
  });

  test('a measured plug counts as measured', () => {
    const { map, line } = fourMetreWire;
    const ladder = layLadder(map, line, [], { measuredPlugs: new Map([['node:c2', 0.02]]) });
    expect(ladder.links.map(({ ohms }) => ohms)[3]).toBe(0.02);
    expect(ladder.links.map(({ ohms }) => ohms)[1]).toBe(0.005);
  });

  test('a place found on the ladder lies at its own ohms, warm stretches or not', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 4000, noNaN: true }),
        fc.double({ min: 0, max: 2000, noNaN: true }),
        fc.integer({ min: -40, max: 150 }),
        (stationMm, fromMm, celsius) => {
          const { map, line } = straightWire({ lengthMm: 4000, plugsMm: [1200, 2800], mm2: 0.5 });
          const ladder = layLadder(map, line, [], {
            warmStretches: [{ fromMm, toMm: fromMm + 900, celsius }],
          });
          const { link, share } = placesOnLadder(ladder, [stationMm]);
          const held = ladder.links[link[0] as number];
          if (!held) throw new Error('every station lies on a link');
          expect(held.kind).toBe('wire');
          const ohms = wireOhmsTo(ladder, held.fromMm) + (share[0] as number) * held.ohms;
          expect(ohms).toBeCloseTo(wireOhmsTo(ladder, stationMm), 12);
        },
      ),
      { seed: 2, numRuns: 200 },
    );
  });
});
