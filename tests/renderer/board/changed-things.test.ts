import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { MapDocument } from '#core/map/map-document.ts';
import { boardIndex, idsInBox } from '#renderer/board/board-index.ts';
import { changedThings } from '#renderer/board/changed-things.ts';
import { runLine } from '#renderer/board/run-line.ts';
import { randomMap } from '#tests/generated/random-map.ts';
import { sample } from '#tests/sample.ts';

const moved = (map: MapDocument, which: readonly number[], byMm: number): MapDocument => {
  const nodes = new Map(map.nodes);
  const ids = [...nodes.keys()];
  for (const index of which) {
    const node = nodes.get(ids[index % ids.length] as 'node:x');
    if (node) nodes.set(node.id, { ...node, at: { ...node.at, xMm: node.at.xMm + byMm } });
  }
  return { ...map, nodes };
};

test('nothing is drawn otherwise in one and the same map', () => {
  expect(changedThings(sample.map, sample.map)).toEqual(new Set());
  expect(changedThings(sample.map, { ...sample.map, revision: 9 })).toEqual(new Set());
});

test('a moved node takes along the runs that end at it', () => {
  const index = [...sample.map.nodes.keys()].indexOf('node:far');
  const changed = changedThings(sample.map, moved(sample.map, [index], 5));
  expect(changed).toEqual(new Set(['node:far', 'segment:rear']));
});

test('what came and what went both count', () => {
  const rubSpots = new Map();
  const without = { ...sample.map, rubSpots };
  const ids = new Set(sample.map.rubSpots.keys());
  expect(ids.size).toBeGreaterThan(0);
  expect(changedThings(sample.map, without)).toEqual(ids);
  expect(changedThings(without, sample.map)).toEqual(ids);
});

test('whatever moves, a run is called changed exactly when its line is another', () => {
  const map = randomMap(11, { runs: 40 });
  fc.assert(
    fc.property(fc.array(fc.nat(60), { maxLength: 5 }), fc.integer({ min: 1, max: 50 }), (which, byMm) => {
      const before = new Map([...map.segments.values()].map((run) => [run.id, runLine(map, run)]));
      const after = moved(map, which, byMm);
      const changed = changedThings(map, after);
      for (const run of after.segments.values()) {
        const same = JSON.stringify(runLine(after, run)) === JSON.stringify(before.get(run.id));
        expect(changed.has(run.id)).toBe(!same);
      }
    }),
    { seed: 20261125, numRuns: 60 },
  );
});

test('an index carried over many edits in a row finds in any box what a fresh one finds', () => {
  const start = randomMap(12, { runs: 60 });
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.nat(80), fc.integer({ min: -400, max: 400 })), { minLength: 1, maxLength: 8 }),
      fc.integer({ min: 0, max: 4000 }),
      fc.integer({ min: -800, max: 800 }),
      (moves, xMm, yMm) => {
        let map = start;
        let carried = boardIndex(map);
        for (const [which, byMm] of moves) {
          map = moved(map, [which], byMm);
          carried = boardIndex(map, carried);
        }
        const box = { minXMm: xMm, minYMm: yMm, maxXMm: xMm + 300, maxYMm: yMm + 200 };
        // A copy of the map has no index yet.
        expect(idsInBox(carried, box)).toEqual(idsInBox(boardIndex({ ...map }), box));
      },
    ),
    { seed: 20261126, numRuns: 60 },
  );
});
