import fc from 'fast-check';
import { expect, test } from 'vitest';
import { moveNode } from '#core/map/commands/move-node.ts';
import { removeThings } from '#core/map/commands/remove-things.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { applyPatch } from '#core/map/patch.ts';
import { boardIndex, drawnBox, idsInBox, moreInBox } from '#renderer/board/board-index.ts';
import { hitsAt } from '#renderer/board/hit.ts';
import { sample } from '#tests/sample.ts';

const after = (map: MapDocument, patch: ReturnType<typeof moveNode>): MapDocument => {
  if (!patch.ok) throw new Error(patch.problem.code);
  const next = applyPatch(map, patch.value);
  if (!next.ok) throw new Error(next.problem.code);
  return next.value;
};

const everything = { minXMm: -9e4, minYMm: -9e4, maxXMm: 9e4, maxYMm: 9e4 };

test('a node wins over the run it sits on, and a fixing over its run', () => {
  const index = boardIndex(sample.map);
  expect(hitsAt(index, { xMm: 500, yMm: 0 }, 8)[0]).toMatchObject({ kind: 'node', id: 'node:middle' });
  expect(hitsAt(index, { xMm: 100, yMm: 1 }, 8)[0]).toMatchObject({ kind: 'clip', id: 'clip:a' });
});

test('a hit on a run tells the station along it', () => {
  const hit = hitsAt(boardIndex(sample.map), { xMm: 1200, yMm: 4 }, 8)[0];
  expect(hit).toMatchObject({ kind: 'segment', id: 'segment:rear', stationMm: 200, distanceMm: 4 });
});

test('nothing is hit beyond the reach', () => {
  expect(hitsAt(boardIndex(sample.map), { xMm: 1200, yMm: 9 }, 8)).toEqual([]);
});

test('an index carried over an edit finds the same as one made afresh', () => {
  const coordinate = fc.integer({ min: -800, max: 2400 });
  fc.assert(
    fc.property(
      fc.array(
        fc.record({
          nodeId: fc.constantFrom('node:west', 'node:middle', 'node:east', 'node:far'),
          xMm: coordinate,
          yMm: coordinate,
        }),
        { minLength: 1, maxLength: 6 },
      ),
      coordinate,
      coordinate,
      (moves, xMm, yMm) => {
        let map = sample.map;
        let carried = boardIndex(map);
        for (const { nodeId, xMm: x, yMm: y } of moves) {
          const at = { xMm: x, yMm: y, zMm: 0 };
          map = after(map, moveNode(map, { nodeId: nodeId as 'node:west', at }));
          carried = boardIndex(map, carried);
        }
        expect(hitsAt(carried, { xMm, yMm }, 120)).toEqual(hitsAt(boardIndex(map), { xMm, yMm }, 120));
      },
    ),
    { seed: 20260105, numRuns: 150 },
  );
});

test('what was deleted is found no more, and what came back is', () => {
  const whole = boardIndex(sample.map);
  const without = after(sample.map, removeThings(sample.map, { ids: ['node:far'] }));
  const less = boardIndex(without, whole);
  expect(idsInBox(less, everything)).toEqual(idsInBox(boardIndex(without), everything));
  expect(idsInBox(less, everything).has('segment:rear')).toBe(false);
  expect(idsInBox(boardIndex(sample.map, less), everything)).toEqual(idsInBox(whole, everything));
});

test('the box round all that is drawn holds every node and rub spot', () => {
  expect(drawnBox(sample.map)).toEqual({ minXMm: 0, minYMm: 0, maxXMm: 1500, maxYMm: 4 });
});

test('more than so many things of a sort are in a box exactly when counting them says so', () => {
  const index = boardIndex(sample.map);
  const isRun = (id: string): boolean => id.startsWith('segment:');
  const runs = sample.map.segments.size;
  expect(moreInBox(index, everything, runs - 1, isRun)).toBe(true);
  expect(moreInBox(index, everything, runs, isRun)).toBe(false);
});
