import { expect, test } from 'vitest';
import type { MapDocument } from '#core/map/map-document.ts';
import { boardIndex, drawnBox } from '#renderer/board/board-index.ts';
import { toScreen } from '#renderer/board/camera.ts';
import { farView } from '#renderer/board/far-view.ts';
import { emptyOverlay } from '#renderer/board/overlay.ts';
import type { SceneInput } from '#renderer/board/scene.ts';
import { boardColours } from '#renderer/theme/tokens.ts';
import { randomMap } from '#tests/generated/random-map.ts';
import { paperSheet } from './painted-page.ts';

/** Hatching needs a browser, so this car has no panels. */
const map: MapDocument = { ...randomMap(51, { runs: 200 }), panels: new Map() };
const size = { widthPx: 900, heightPx: 600 };
const input: SceneInput = {
  index: boardIndex(map),
  camera: { pxPerMm: 3, xPx: -2_000, yPx: 700 },
  size,
  colours: boardColours.day,
  lit: null,
  selection: [],
  hover: null,
  overlay: emptyOverlay,
  fontFamily: 'sans-serif',
};
const ever = Number.POSITIVE_INFINITY;

test('the whole drawing lies where the view has it, however close or far the view is', () => {
  const sheet = paperSheet();
  const far = farView(sheet);
  far.paint(input, ever);
  expect(far.unfinished(input)).toBe(false);
  const box = drawnBox(map);
  if (!box) throw new Error('nothing drawn');
  for (const camera of [input.camera, { pxPerMm: 0.05, xPx: 400, yPx: 300 }]) {
    far.lay(camera);
    const place = sheet.place();
    if (!place) throw new Error('out of sight');
    const corners = [toScreen(camera, { xMm: box.minXMm, yMm: box.maxYMm })];
    corners.push(toScreen(camera, { xMm: box.maxXMm, yMm: box.minYMm }));
    for (const { xPx, yPx } of corners) {
      expect(xPx).toBeGreaterThanOrEqual(place.xPx - 1e-6);
      expect(yPx).toBeGreaterThanOrEqual(place.yPx - 1e-6);
      expect(xPx).toBeLessThanOrEqual(place.xPx + size.widthPx * place.stretched + 1e-6);
      expect(yPx).toBeLessThanOrEqual(place.yPx + size.heightPx * place.stretched + 1e-6);
    }
  }
});

test('it is painted a little at a time, and anew after an edit but not after a look elsewhere', () => {
  const far = farView(paperSheet());
  far.paint(input, 0);
  expect(far.unfinished(input)).toBe(true);
  for (let i = 0; i < 500 && far.unfinished(input); i++) far.paint(input, 0);
  expect(far.unfinished(input)).toBe(false);
  expect(far.unfinished({ ...input, camera: { pxPerMm: 1, xPx: 0, yPx: 0 } })).toBe(false);
  const [run] = map.segments.values();
  if (!run) throw new Error('a map without runs');
  const segments = new Map(map.segments);
  segments.delete(run.id);
  expect(far.unfinished({ ...input, index: boardIndex({ ...map, segments }, input.index) })).toBe(true);
});

test('a map with nothing drawn has no far view to paint or to show', () => {
  const sheet = paperSheet();
  const far = farView(sheet);
  const blank = new Map();
  const empty = { ...map, outlines: blank, segments: blank, nodes: blank, rubSpots: blank };
  const nothing = { ...input, index: boardIndex(empty) };
  expect(far.unfinished(nothing)).toBe(false);
  far.paint(nothing, ever);
  far.lay(nothing.camera);
  expect(sheet.place()).toBeNull();
});
