import fc from 'fast-check';
import { expect, test } from 'vitest';
import { mapText } from '#core/map/exchange.ts';
import { applyPatch, invertPatch, isEmptyPatch } from '#core/map/patch.ts';
import { patchBetween } from '#core/map/patch-between.ts';
import { randomMap } from '#tests/generated/random-map.ts';

test('the patch between two maps leads from one to the other, and its inverse back', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 5_000 }), fc.integer({ min: 1, max: 5_000 }), (a, b) => {
      const before = randomMap(a);
      const after = { ...randomMap(b), id: before.id, revision: before.revision };
      const patch = patchBetween(before, after);
      const there = applyPatch(before, patch);
      if (!there.ok) throw new Error(there.problem.code);
      expect(mapText(there.value)).toBe(mapText(after));
      const back = applyPatch(there.value, invertPatch(patch));
      if (!back.ok) throw new Error(back.problem.code);
      expect(mapText(back.value)).toBe(mapText(before));
    }),
    { seed: 7, numRuns: 30 },
  );
});

test('a map and itself differ in nothing, whatever the order of its fields', () => {
  const map = randomMap(3);
  const turned = new Map(
    [...map.panels].map(([id, panel]) => [
      id,
      Object.fromEntries(Object.entries(panel).reverse()) as typeof panel,
    ]),
  );
  expect(isEmptyPatch(patchBetween(map, { ...map, panels: turned }))).toBe(true);
});
