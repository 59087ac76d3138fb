import fc from 'fast-check';
import { expect, test } from 'vitest';
import { usualBodySize } from '#core/map/body-starters.ts';
import { emptyMap } from '#core/map/map-document.ts';
import { applyPatch } from '#core/map/patch.ts';
import { readiness } from '#core/map/readiness.ts';
import type { Underlay } from '#core/map/records.ts';
import { pixelToPlan, planToPixel } from '#core/map/underlay-place.ts';
import { allShown, layerKinds, layerOf, mapWithout, mayPick } from '#renderer/places/draw/layers.ts';
import { placedPicture } from '#renderer/places/draw/placed-picture.ts';
import { startedMap } from '#renderer/places/draw/starter-form.tsx';
import { sample } from '#tests/sample.ts';

const blank = emptyMap('map:blank', 'Blank', 'hatch', 'right');

test('outlines drawn to the measured car are to scale and bring the usual panels', () => {
  const size = { lengthMm: 4800, widthMm: 1850, wheelbaseMm: 2800 };
  const patch = startedMap(blank, 'estate', size, true);
  const map = patch.ok ? applyPatch(blank, patch.value) : patch;
  if (!map.ok) throw new Error(map.problem.code);
  const started = map.value;
  expect(started.details.bodyStyle).toBe('estate');
  expect(started.details.scale?.distanceMm).toBe(4800);
  expect(started.panels.size).toBeGreaterThan(10);
  const done = readiness(started).filter((item) => item.done);
  const codes = done.map((item) => item.code);
  expect(codes).toEqual(expect.arrayContaining(['scale-set', 'outline-drawn', 'panels-timed']));
});

test('on a map with a drawing, a starter leaves the scale alone', () => {
  const patch = startedMap(sample.map, 'hatch', usualBodySize('hatch'), false);
  const map = patch.ok ? applyPatch(sample.map, patch.value) : patch;
  expect(map.ok && map.value.details.scale).toBeNull();
  expect(map.ok && map.value.panels).toBe(sample.map.panels);
});

const underlay: Underlay = {
  id: 'underlay:photo',
  name: 'Photo',
  imageSha256: 'a'.repeat(64),
  mediaType: 'image/png',
  widthPx: 2000,
  heightPx: 1000,
  origin: { xMm: -300, yMm: 900 },
  mmPerPx: 1.7,
  turnRad: 0.2,
  opacity: 0.6,
  hidden: false,
  order: 0,
};
const withPicture = { ...blank, underlays: new Map([[underlay.id, underlay]]) };

test('two pressed places of a picture come to lie where they are said to be', () => {
  const place = fc.record({
    xMm: fc.integer({ min: -3000, max: 3000 }),
    yMm: fc.integer({ min: -3000, max: 3000 }),
  });
  fc.assert(
    fc.property(place, place, place, place, (from, to, trueFrom, trueTo) => {
      fc.pre(Math.hypot(from.xMm - to.xMm, from.yMm - to.yMm) > 100);
      fc.pre(Math.hypot(trueFrom.xMm - trueTo.xMm, trueFrom.yMm - trueTo.yMm) > 100);
      const known = { how: 'places', from: trueFrom, to: trueTo } as const;
      const patch = placedPicture(withPicture, underlay, { from, to }, known);
      const laid = patch.ok ? (patch.value.changed[0]?.[1] as Underlay) : underlay;
      const now = pixelToPlan(laid, planToPixel(underlay, to));
      expect(now.xMm).toBeCloseTo(trueTo.xMm, 4);
      expect(now.yMm).toBeCloseTo(trueTo.yMm, 4);
    }),
    { seed: 20, numRuns: 60 },
  );
});

test('by a distance alone the first place stays and the second lies straight behind it', () => {
  const pressed = { from: { xMm: 100, yMm: 50 }, to: { xMm: 900, yMm: 250 } };
  const known = { how: 'distance', distanceMm: 4000, lie: 'along' } as const;
  const patch = placedPicture(withPicture, underlay, pressed, known);
  const laid = patch.ok ? (patch.value.changed[0]?.[1] as Underlay) : underlay;
  const first = pixelToPlan(laid, planToPixel(underlay, pressed.from));
  const second = pixelToPlan(laid, planToPixel(underlay, pressed.to));
  expect(first.xMm).toBeCloseTo(100, 6);
  expect(second.xMm).toBeCloseTo(4100, 6);
  expect(second.yMm).toBeCloseTo(50, 6);
});

test('what is hidden leaves the board, what is locked cannot be picked, and nothing leaves the map', () => {
  expect(mapWithout(sample.map, allShown.hidden)).toBe(sample.map);
  const kinds = new Set(layerKinds);
  const bare = mapWithout(sample.map, kinds);
  expect(bare.segments.size + bare.nodes.size + bare.panels.size + bare.rubSpots.size).toBe(0);
  expect(bare.circuits).toBe(sample.map.circuits);
  const locked = { hidden: new Set<never>(), locked: new Set(['loom'] as const) };
  expect(mayPick(locked, 'clip:a')).toBe(false);
  expect(mayPick(locked, 'panel:seat')).toBe(true);
  expect(layerOf('circuit:seat-switch')).toBeNull();
});
