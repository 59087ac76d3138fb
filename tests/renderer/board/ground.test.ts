import { expect, test } from 'vitest';
import { moveNode } from '#core/map/commands/move-node.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { applyPatch } from '#core/map/patch.ts';
import { boardIndex } from '#renderer/board/board-index.ts';
import type { SheetPlace } from '#renderer/board/board-sheet.ts';
import { panBy, zoomAt } from '#renderer/board/camera.ts';
import { boardGround } from '#renderer/board/ground.ts';
import { emptyOverlay } from '#renderer/board/overlay.ts';
import type { SceneInput } from '#renderer/board/scene.ts';
import { boardColours } from '#renderer/theme/tokens.ts';
import { randomMap } from '#tests/generated/random-map.ts';
import { paperSheet } from './painted-page.ts';

/** Hatching needs a browser, so this car has no panels. */
const map: MapDocument = { ...randomMap(31, { runs: 400, rubSpots: 20 }), panels: new Map() };
const input: SceneInput = {
  index: boardIndex(map),
  camera: { pxPerMm: 0.2, xPx: 40, yPx: 300 },
  size: { widthPx: 900, heightPx: 600 },
  colours: boardColours.day,
  lit: null,
  selection: [],
  hover: null,
  overlay: emptyOverlay,
  fontFamily: 'sans-serif',
};
/** So little time that every picture takes several frames. */
const hurried = { moving: true, budgetMs: 0.01, wholeMs: 0 };
const atRest = { moving: false, budgetMs: 0.05, wholeMs: 0 };

const newGround = () => {
  const sheets = [paperSheet(), paperSheet()] as const;
  const ground = boardGround(sheets);
  const settle = (wanted: SceneInput): void => {
    ground.step(wanted, atRest);
    for (let i = 0; i < 5_000 && ground.unfinished(wanted, false); i++) ground.step(wanted, atRest);
    expect(ground.unfinished(wanted, false)).toBe(false);
  };
  /** Where the one picture in sight lies. */
  const place = (): SheetPlace => {
    const [only, ...others] = sheets.flatMap((sheet) => sheet.place() ?? []);
    expect(others).toEqual([]);
    if (!only) throw new Error('no picture in sight');
    return only;
  };
  return { ground, settle, place };
};

const edited = (by: number): SceneInput => {
  const [node] = map.nodes.values();
  if (!node) throw new Error('a map without nodes');
  const patch = moveNode(map, { nodeId: node.id, at: { ...node.at, xMm: node.at.xMm + by } });
  if (!patch.ok) throw new Error(patch.problem.code);
  const after = applyPatch(map, patch.value);
  if (!after.ok) throw new Error(after.problem.code);
  return { ...input, index: boardIndex(after.value, input.index) };
};

test('the first picture is there after one step, however long it takes', () => {
  const { ground, place } = newGround();
  ground.step(input, hurried);
  expect(place().stretched).toBe(1);
  expect(ground.lacking(input)).toEqual(new Set());
});

test('while the view zooms the last picture is stretched, and at rest a sharp one takes its place', () => {
  const { ground, settle, place } = newGround();
  settle(input);
  ground.step(input, hurried);
  const closer = { ...input, camera: zoomAt(input.camera, { xPx: 450, yPx: 300 }, 1.5) };
  ground.step(closer, hurried);
  expect(place().stretched).toBeCloseTo(1.5, 9);
  settle(closer);
  expect(place().stretched).toBe(1);
});

test('a small pan while moving shifts the picture by as much', () => {
  const { ground, settle, place } = newGround();
  settle(input);
  ground.step({ ...input, camera: panBy(input.camera, 30, -12) }, hurried);
  const moved = place();
  settle(input);
  expect(moved).toEqual({ xPx: place().xPx + 30, yPx: place().yPx - 12, stretched: 1 });
});

test('what is being moved is lacking on the ground until the hand rests, and nothing else is', () => {
  const { ground, settle } = newGround();
  settle(input);
  const first = edited(10);
  const lacking = ground.lacking(first);
  const [node] = map.nodes.keys();
  const runs = [...map.segments.values()].filter((run) => run.fromNodeId === node || run.toNodeId === node);
  expect(lacking).toEqual(new Set([node, ...runs.map(({ id }) => id)]));
  for (let by = 11; by < 400; by++) ground.step(edited(by), hurried);
  const last = edited(400);
  expect(ground.lacking(last)).toEqual(lacking);
  settle(last);
  expect(ground.lacking(last)).toEqual(new Set());
});
