import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { setHeights } from '#core/map/commands/set-heights.ts';
import { compareMaps } from '#core/map/compare-maps.ts';
import { mapText } from '#core/map/exchange.ts';
import { readMap } from '#core/map/read-map.ts';
import { edited } from '#tests/generated/edited.ts';
import { randomEdit, verbNames } from '#tests/generated/random-edit.ts';
import { randomMap } from '#tests/generated/random-map.ts';
import { sample } from '#tests/sample.ts';

const seeds = fc.integer({ min: 0, max: 1_000_000 });

describe('comparing two states of a map', () => {
  test('a map does not differ from itself, nor from itself read back from its file', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const map = randomMap(seed);
        const read = readMap(mapText(map));
        if (!read.ok) throw new Error(read.problem.code);
        for (const other of [map, read.value.map]) {
          expect(compareMaps(map, other)).toEqual({ added: [], removed: [], moved: [], changed: [] });
        }
      }),
      { seed: 3, numRuns: 40 },
    );
  });

  test('after an edit exactly the touched things are named, whichever verb it was', () => {
    let compared = 0;
    for (const verb of verbNames) {
      fc.assert(
        fc.property(seeds, (seed) => {
          const map = randomMap(seed);
          const patch = randomEdit(map, verb, seed);
          if (!patch?.ok) return;
          compared++;
          const { added, removed, moved, changed } = compareMaps(map, edited(map, patch));
          const ids = (things: readonly { id: string }[]): string[] => things.map(({ id }) => id).sort();
          expect(ids(added)).toEqual(ids(patch.value.added));
          expect(ids(removed)).toEqual(ids(patch.value.removed));
          const touched = patch.value.changed
            .filter(([was, is]) => JSON.stringify(was) !== JSON.stringify(is))
            .map(([, is]) => is);
          expect([...new Set([...ids(moved), ...ids(changed)])].sort()).toEqual(ids(touched));
        }),
        { seed: 5, numRuns: 6 },
      );
    }
    expect(compared).toBeGreaterThan(verbNames.length * 2);
  });

  test('backwards, what was added is removed', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const map = randomMap(seed);
        const patch = randomEdit(map, 'removeThings', seed);
        if (!patch?.ok) return;
        const after = edited(map, patch);
        expect(compareMaps(after, map).added).toEqual(compareMaps(map, after).removed);
      }),
      { seed: 9, numRuns: 30 },
    );
  });

  test('a place counts as moved with its distance, everything else by the name of the field', () => {
    const west = sample.map.nodes.get('node:west');
    if (!west) throw new Error('the sample has no west');
    const after = {
      ...sample.map,
      nodes: new Map(sample.map.nodes).set(west.id, {
        ...west,
        name: 'Front',
        at: { xMm: 30, yMm: 40, zMm: 0 },
      }),
    };
    const comparison = compareMaps(sample.map, after);
    expect(comparison.moved).toEqual([{ id: west.id, kind: 'node', name: 'Front', byMm: 50 }]);
    expect(comparison.changed).toEqual([{ id: west.id, kind: 'node', name: 'Front', fields: ['name'] }]);
  });

  test('a height given to a node is a move too', () => {
    const heights = [{ at: 'to', zMm: 250 }] as const;
    const after = edited(sample.map, setHeights(sample.map, { segmentId: 'segment:rear', heights }));
    expect(compareMaps(sample.map, after).moved).toEqual([
      { id: 'node:far', kind: 'node', name: 'Seat switch', byMm: 250 },
    ]);
  });
});
