import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { MapDocument } from '#core/map/map-document.ts';
import { boardIndex } from '#renderer/board/board-index.ts';
import { panBy } from '#renderer/board/camera.ts';
import { emptyOverlay } from '#renderer/board/overlay.ts';
import type { SceneInput } from '#renderer/board/scene.ts';
import { boardStage } from '#renderer/board/stage.ts';
import { boardColours } from '#renderer/theme/tokens.ts';
import { randomMap } from '#tests/generated/random-map.ts';
import { paperSheet } from './painted-page.ts';

/** Hatching needs a browser, so this car has no panels. */
const map: MapDocument = { ...randomMap(61, { runs: 900 }), panels: new Map() };
const input: SceneInput = {
  index: boardIndex(map),
  camera: { pxPerMm: 0.5, xPx: -300, yPx: 300 },
  size: { widthPx: 900, heightPx: 600 },
  colours: boardColours.day,
  lit: null,
  selection: [],
  hover: null,
  overlay: emptyOverlay,
  fontFamily: 'sans-serif',
};

/** Frames come when the test says so. */
let waiting: (() => void) | null = null;
const frame = (): void => {
  const due = waiting;
  waiting = null;
  due?.();
};
const untilStill = async (): Promise<void> => {
  for (let i = 0; i < 20_000 && waiting; i++) {
    frame();
    if (i % 50 === 0) await new Promise((resolve) => setTimeout(resolve, 10));
  }
  expect(waiting).toBeNull();
};

beforeEach(() => {
  vi.stubGlobal('requestAnimationFrame', (due: () => void) => {
    waiting = due;
    return 1;
  });
  vi.stubGlobal('cancelAnimationFrame', () => {
    waiting = null;
  });
});
afterEach(() => {
  waiting = null;
  vi.unstubAllGlobals();
});

const stageOnPaper = () => {
  const sheets = { far: paperSheet(), ground: [paperSheet(), paperSheet()], top: paperSheet() } as const;
  return { stage: boardStage(sheets), sheets };
};

test('a board where nothing happens asks for no more frames', async () => {
  const { stage } = stageOnPaper();
  stage.show(input);
  await untilStill();
});

test('a pan faster than the ground can follow shows the whole drawing coarsely, and at rest no more', async () => {
  const { stage, sheets } = stageOnPaper();
  stage.show(input);
  await untilStill();
  expect(sheets.far.place()).toBeNull();
  const far = panBy(input.camera, 800, 0);
  stage.look(far);
  frame();
  expect(sheets.far.place()).not.toBeNull();
  stage.show({ ...input, camera: far });
  await untilStill();
  expect(sheets.far.place()).toBeNull();
});

test('the top lies over the board only while something is picked or pointed at', async () => {
  const { stage, sheets } = stageOnPaper();
  const [run] = map.segments.keys();
  stage.show({ ...input, selection: [run as string] });
  await untilStill();
  expect(sheets.top.place()).toEqual({ xPx: 0, yPx: 0, stretched: 1 });
  stage.show(input);
  await untilStill();
  expect(sheets.top.place()).toBeNull();
});
