import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { LayeredTable } from '#core/map/layered-table.ts';

const step = fc.record({ put: fc.boolean(), key: fc.nat(9), value: fc.integer() });

describe('changes laid over a table', () => {
  test('read like a table that was changed in the same way, and leave the one below alone', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(9)), fc.array(step), (keys, steps) => {
        const below = new Map(keys.map((key) => [key, -key]));
        const before = [...below];
        const layered = new LayeredTable<number, number>(below);
        const plain = new Map(below);
        for (const { put, key, value } of steps) {
          if (put) {
            layered.set(key, value);
            plain.set(key, value);
          } else expect(layered.delete(key)).toBe(plain.delete(key));
          expect(layered.size).toBe(plain.size);
          expect(layered.get(key)).toBe(plain.get(key));
          expect(layered.has(key)).toBe(plain.has(key));
        }
        expect(new Map(layered)).toEqual(plain);
        expect([...layered.keys()].length).toBe(layered.size);
        const visited = new Map<number, number>();
        layered.forEach((value, key) => {
          visited.set(key, value);
        });
        expect(visited).toEqual(new Map(layered.entries()));
        expect([...layered.values()].toSorted()).toEqual([...plain.values()].toSorted());
        expect([...below]).toEqual(before);
      }),
      { seed: 91, numRuns: 500 },
    );
  });

  test('a record replaced while the table is walked is met once', () => {
    const layered = new LayeredTable(new Map([1, 2, 3].map((key) => [key, key])));
    const met: number[] = [];
    for (const [key, value] of layered) {
      met.push(key);
      layered.set(key, value * 10);
    }
    expect(met).toEqual([1, 2, 3]);
    expect([...layered.values()]).toEqual([10, 20, 30]);
  });
});
