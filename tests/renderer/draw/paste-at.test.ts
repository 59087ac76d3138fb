import fc from 'fast-check';
import { expect, test } from 'vitest';
import { copiedThings } from '#core/map/copied-things.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { applyPatch } from '#core/map/patch.ts';
import { seededChance } from '#core/quantity/chance.ts';
import { type PasteAim, pasteAt } from '#renderer/places/draw/copy/paste-at.ts';
import { boundsOfThings } from '#renderer/places/draw/things-bounds.ts';
import { sample } from '#tests/sample.ts';

function pasted(ids: readonly string[], aim: PasteAim): { map: MapDocument; ids: readonly string[] } {
  const things = copiedThings(sample.map, ids);
  if (!things.ok) throw new Error(things.problem.code);
  const made = pasteAt(sample.map, things.value, aim, seededChance(3));
  if (!made.ok) throw new Error(made.problem.code);
  const after = applyPatch(sample.map, made.value.patch);
  if (!after.ok) throw new Error(after.problem.code);
  return { map: after.value, ids: made.value.ids };
}

const middleOf = (map: MapDocument, ids: readonly string[]) => {
  const box = boundsOfThings(map, ids);
  return box && { xMm: (box.minXMm + box.maxXMm) / 2, yMm: (box.minYMm + box.maxYMm) / 2 };
};

test('copies come with their middle at the pointer, wherever it is, to the millimetre', () => {
  const place = fc.integer({ min: -5_000, max: 5_000 });
  fc.assert(
    fc.property(place, place, (xMm, yMm) => {
      const { map, ids } = pasted(['segment:rear'], { to: 'place', at: { xMm, yMm } });
      const middle = middleOf(map, ids);
      expect(Math.abs((middle?.xMm ?? 0) - xMm)).toBeLessThanOrEqual(1);
      expect(Math.abs((middle?.yMm ?? 0) - yMm)).toBeLessThanOrEqual(1);
    }),
    { seed: 11, numRuns: 30 },
  );
});

test('without a pointer they lie beside the original, each further one a step farther', () => {
  const view = { minXMm: 0, maxXMm: 3_000, minYMm: -1_000, maxYMm: 1_000 };
  const first = pasted(['rub-spot:edge'], { to: 'beside', view, times: 1 });
  expect(middleOf(first.map, first.ids)).toEqual({ xMm: 830, yMm: -76 });
  const second = pasted(['rub-spot:edge'], { to: 'beside', view, times: 2 });
  expect(middleOf(second.map, second.ids)).toEqual({ xMm: 910, yMm: -156 });
});

test('where the original is out of view they lie in the middle of it', () => {
  const view = { minXMm: 3_000, maxXMm: 4_000, minYMm: 0, maxYMm: 500 };
  const { map, ids } = pasted(['node:west'], { to: 'beside', view, times: 1 });
  expect(middleOf(map, ids)).toEqual({ xMm: 3_500, yMm: 250 });
});

test('a pasted run is picked without the ends it brought; a circuit alone has no place and still comes', () => {
  expect(pasted(['segment:rear'], { to: 'beside', view: null, times: 1 }).ids).toHaveLength(1);
  const { ids } = pasted(['circuit:seat-switch'], { to: 'place', at: { xMm: 0, yMm: 0 } });
  expect(ids).toHaveLength(1);
  expect(ids[0]).toMatch(/^circuit:/);
});
