import fc from 'fast-check';
import { expect, test } from 'vitest';
import { boundsOf } from '#core/geometry/bounds.ts';
import { boardIndex, drawnBox } from '#renderer/board/board-index.ts';
import { type Camera, fitCamera, panBy, viewBox, zoomAt } from '#renderer/board/camera.ts';
import { emptyOverlay } from '#renderer/board/overlay.ts';
import { paintClips } from '#renderer/board/paint/clips.ts';
import { nameLayout, paintNames } from '#renderer/board/paint/names.ts';
import { paintNodes } from '#renderer/board/paint/nodes.ts';
import { paintPanels } from '#renderer/board/paint/panels.ts';
import { paintRubSpots } from '#renderer/board/paint/rub-spots.ts';
import { paintRuns } from '#renderer/board/paint/runs.ts';
import { groundMarks, paintPlan } from '#renderer/board/paint-plan.ts';
import { runLine } from '#renderer/board/run-line.ts';
import { type SceneInput, sceneOf } from '#renderer/board/scene.ts';
import { boardColours } from '#renderer/theme/tokens.ts';
import { randomMap } from '#tests/generated/random-map.ts';
import { letterPx, paintedPage } from './painted-page.ts';

const map = randomMap(21, { runs: 900, panels: 30, rubSpots: 90 });
const size = { widthPx: 900, heightPx: 600 };
const whole = fitCamera(drawnBox(map) ?? { minXMm: 0, minYMm: 0, maxXMm: 1, maxYMm: 1 }, size);
const inputAt = (camera: Camera, more: Partial<SceneInput> = {}): SceneInput => ({
  index: boardIndex(map),
  camera,
  size,
  colours: boardColours.day,
  lit: null,
  selection: [],
  hover: null,
  overlay: emptyOverlay,
  fontFamily: 'sans-serif',
  ...more,
});
const somewhere = fc
  .record({
    x: fc.integer({ min: 0, max: 900 }),
    y: fc.integer({ min: 0, max: 600 }),
    factor: fc.double({ min: 1, max: 30, noNaN: true }),
  })
  .map(({ x, y, factor }) => zoomAt(whole, { xPx: x, yPx: y }, factor));
const settings = { seed: 20261127, numRuns: 60 };

test('whatever can be seen of a run, it is listed; what is far out of view is not', () => {
  fc.assert(
    fc.property(somewhere, (camera) => {
      const listed = new Set(sceneOf(inputAt(camera)).segments.map(({ id }) => id));
      const view = viewBox(camera, size);
      const far = viewBox(camera, size, 81);
      for (const run of map.segments.values()) {
        const points = runLine(map, run)?.points ?? [];
        const seen = points.some(
          ({ xMm, yMm }) =>
            xMm >= view.minXMm && xMm <= view.maxXMm && yMm >= view.minYMm && yMm <= view.maxYMm,
        );
        if (seen) expect(listed.has(run.id)).toBe(true);
        const box = boundsOf(points);
        const away =
          !box ||
          box.minXMm > far.maxXMm ||
          box.maxXMm < far.minXMm ||
          box.minYMm > far.maxYMm ||
          box.maxYMm < far.minYMm;
        if (away) expect(listed.has(run.id)).toBe(false);
      }
    }),
    settings,
  );
});

test('things painted elsewhere are left out, and only those', () => {
  const all = sceneOf(inputAt(whole));
  const [first, second] = all.nodes;
  const without = new Set([first?.id as string]);
  const less = sceneOf(inputAt(whole, { without }));
  expect(less.nodes).toHaveLength(all.nodes.length - 1);
  expect(less.nodes).not.toContain(first);
  expect(less.segments).toEqual(all.segments);
  expect(sceneOf(inputAt(whole, { only: new Set([second?.id as string]) })).nodes).toEqual([second]);
});

test('each thing in view is in one piece of each of its painters, and pieces are short', () => {
  const scene = sceneOf(inputAt(whole));
  const plan = paintPlan(scene);
  for (const [paint, list, most] of [
    [paintPanels, 'panels', 4],
    [paintRuns, 'segments', 64],
    [paintClips, 'segments', 128],
    [paintRubSpots, 'rubSpots', 32],
    [paintNodes, 'nodes', 64],
  ] as const) {
    const pieces = plan.filter((step) => step.paint === paint).map((step) => step.scene[list]);
    expect(pieces.flat()).toEqual(scene[list]);
    expect(Math.max(...pieces.map((piece) => piece.length))).toBeLessThanOrEqual(most);
  }
});

test('the pieces keep the drawing order of the painters', () => {
  const places = paintPlan(sceneOf(inputAt(whole))).map((step) => groundMarks.indexOf(step.paint));
  const known = places.filter((place) => place >= 0);
  expect(known).toEqual([...known].sort((a, b) => a - b));
});

test('names laid out a few at a time stand where they stand when laid out at one go', () => {
  const scene = sceneOf(inputAt(zoomAt(whole, { xPx: 400, yPx: 300 }, 3)));
  const atOnce = paintedPage();
  paintNames(atOnce.c, scene);
  const piecewise = paintedPage();
  const layout = nameLayout(scene);
  for (let i = 0; i < 400; i++) layout.paintSome(piecewise.c, 5);
  expect(atOnce.written.length).toBeGreaterThan(5);
  expect(piecewise.written).toEqual(atOnce.written);
});

test('no name crosses the edge of the board or another name, with a margin or without', () => {
  fc.assert(
    fc.property(somewhere, fc.constantFrom(0, 200), (camera, marginPx) => {
      const wide = { widthPx: size.widthPx + 2 * marginPx, heightPx: size.heightPx + 2 * marginPx };
      const page = paintedPage();
      const shifted = panBy(camera, marginPx, marginPx);
      paintNames(page.c, sceneOf(inputAt(shifted, { size: wide, marginPx })));
      for (const [i, { text, leftPx, yPx }] of page.written.entries()) {
        const rightPx = leftPx + text.length * letterPx;
        const edges = [marginPx, marginPx + size.widthPx];
        const inRows = yPx > marginPx && yPx < marginPx + size.heightPx;
        if (inRows) for (const edge of edges) expect(leftPx < edge && rightPx > edge).toBe(false);
        for (const other of page.written.slice(i + 1)) {
          const across = leftPx < other.leftPx + other.text.length * letterPx && other.leftPx < rightPx;
          expect(across && Math.abs(other.yPx - yPx) < 13).toBe(false);
        }
      }
    }),
    settings,
  );
});

test('a margin round the board changes no name on it', () => {
  fc.assert(
    fc.property(somewhere, (camera) => {
      const marginPx = 200;
      const plain = paintedPage();
      paintNames(plain.c, sceneOf(inputAt(camera)));
      const wide = { widthPx: size.widthPx + 2 * marginPx, heightPx: size.heightPx + 2 * marginPx };
      const page = paintedPage();
      paintNames(page.c, sceneOf(inputAt(panBy(camera, marginPx, marginPx), { size: wide, marginPx })));
      const where = (text: string, leftPx: number, yPx: number): string =>
        `${text} ${leftPx.toFixed(3)} ${yPx.toFixed(3)}`;
      const withMargin = new Set(
        page.written.map(({ text, leftPx, yPx }) => where(text, leftPx - marginPx, yPx - marginPx)),
      );
      for (const { text, leftPx, yPx } of plain.written) {
        expect(withMargin).toContain(where(text, leftPx, yPx));
      }
    }),
    settings,
  );
});
