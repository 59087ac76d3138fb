import { layerSheet, type Sheet } from './board-sheet.ts';
import type { Camera } from './camera.ts';
import { farView } from './far-view.ts';
import { boardGround, mostLacking } from './ground.ts';
import { paintClips } from './paint/clips.ts';
import { paintNames } from './paint/names.ts';
import { paintNodes } from './paint/nodes.ts';
import { paintOutlines } from './paint/outlines.ts';
import { paintOverlay } from './paint/overlay.ts';
import { paintPanels } from './paint/panels.ts';
import { paintRubSpots } from './paint/rub-spots.ts';
import { paintRuns } from './paint/runs.ts';
import { paintSelection } from './paint/selection.ts';
import { type Painter, type Scene, type SceneInput, sceneOf } from './scene.ts';

/** What is being changed is painted above the quiet ground, then what is picked, then the action in hand. */
const changedPainters: readonly Painter[] = [
  paintPanels,
  paintOutlines,
  paintRuns,
  paintClips,
  paintRubSpots,
  paintNodes,
  paintNames,
];
const topPainters: readonly Painter[] = [paintSelection, paintOverlay];

/** The sheets of the board: the whole drawing far below, two that take turns as the ground, and the top. */
export interface BoardSheets<S extends Sheet = ReturnType<typeof layerSheet>> {
  readonly far: S;
  readonly ground: readonly [S, S];
  readonly top: S;
}

/** Sheets for the layers of one stage. */
export const boardSheets = (): BoardSheets => ({
  far: layerSheet(true),
  ground: [layerSheet(true), layerSheet(true)],
  top: layerSheet(false),
});

export interface BoardStage {
  /** Draws, at the next frame, what differs from what was shown before. */
  readonly show: (wanted: SceneInput) => void;
  /** Moves the view at once, before anyone else hears of it. */
  readonly look: (camera: Camera) => void;
  readonly destroy: () => void;
}

/** Nothing moves any more when nothing has changed for this long. */
const restMs = 120;
/** What one frame spends on the next picture of the ground: little while something moves with the hand. */
const movingBudgetMs = 1.5;
const restBudgetMs = 6;
const wholeMs = 4;

const none: ReadonlySet<string> = new Set();
const onTheBoard = { xPx: 0, yPx: 0, stretched: 1 };

/** Draws on the sheets of a stage, at most once a frame. */
export function boardStage(sheets: BoardSheets<Sheet>): BoardStage {
  const ground = boardGround(sheets.ground);
  const far = farView(sheets.far);
  const { top } = sheets;
  let wanted: SceneInput | null = null;
  let topShown: SceneInput | null = null;
  let lackingShown: ReadonlySet<string> | null = null;
  let changedAtMs = Number.NEGATIVE_INFINITY;
  let frame = 0;

  const drawTop = (input: SceneInput): void => {
    const all = ground.lacking(input);
    // So much is soon on the ground itself.
    const lacking = all.size > mostLacking ? none : all;
    if (topShown === input && lackingShown === lacking) return;
    topShown = input;
    lackingShown = lacking;
    if (isEmpty(input) && lacking.size === 0) {
      top.lay(null);
      return;
    }
    top.clear(input.size);
    const scene: Scene = { ...sceneOf({ ...input, only: lacking }), crowded: ground.crowded() };
    top.paint((c) => {
      if (lacking.size > 0) for (const paint of changedPainters) paint(c, scene);
      for (const paint of topPainters) paint(c, scene);
    });
    top.lay(onTheBoard);
  };

  /** Paints the far view when there is time, and shows it where the ground does not reach. */
  const drawFar = (input: SceneInput, resting: boolean, untilMs: number): void => {
    if (resting && ground.slow()) far.paint(input, untilMs);
    far.lay(ground.uncovered(input) ? input.camera : null);
  };
  const restWork = (input: SceneInput): boolean =>
    ground.unfinished(input, false) || (ground.slow() && far.unfinished(input));

  const draw = (): void => {
    frame = 0;
    if (!wanted) return;
    const start = performance.now();
    const moving = start - changedAtMs < restMs;
    if (topShown !== wanted || (moving ? ground.unfinished(wanted, true) : restWork(wanted))) {
      const budgetMs = moving ? movingBudgetMs : restBudgetMs;
      ground.step(wanted, { moving, budgetMs, wholeMs });
      drawTop(wanted);
      drawFar(wanted, !moving && !ground.unfinished(wanted, false), start + restBudgetMs);
      // Whoever watches hears of it; nothing is kept.
      performance.measure('board-draw', { start, end: performance.now() });
      performance.clearMeasures('board-draw');
    }
    if (moving || restWork(wanted)) schedule();
  };
  const schedule = (): void => {
    if (frame === 0) frame = requestAnimationFrame(draw);
  };

  const show = (next: SceneInput): void => {
    const before = wanted;
    wanted = next;
    if (before && (before.camera !== next.camera || before.index !== next.index))
      changedAtMs = performance.now();
    schedule();
  };
  return {
    show,
    look: (camera) => {
      if (wanted) show({ ...wanted, camera });
    },
    destroy: () => cancelAnimationFrame(frame),
  };
}

const isEmpty = ({ selection, hover, overlay }: SceneInput): boolean =>
  selection.length + overlay.lines.length + overlay.points.length + overlay.labels.length === 0 &&
  hover === null &&
  overlay.box === null;
