import Konva from 'konva/lib/Core.js';
import { paintClips } from './paint/clips.ts';
import { paintGrid } from './paint/grid.ts';
import { paintLikelihood } from './paint/likelihood.ts';
import { paintNames } from './paint/names.ts';
import { paintNodes } from './paint/nodes.ts';
import { paintOutlines } from './paint/outlines.ts';
import { paintOverlay } from './paint/overlay.ts';
import { paintPanels } from './paint/panels.ts';
import { paintRanks } from './paint/ranks.ts';
import { paintRubSpots } from './paint/rub-spots.ts';
import { paintRuns } from './paint/runs.ts';
import { paintSelection } from './paint/selection.ts';
import { paintUnderlays } from './paint/underlays.ts';
import type { Painter, Scene } from './scene.ts';

/** Everything on the paper, in drawing order. */
export const groundMarks: readonly Painter[] = [
  paintPanels,
  paintOutlines,
  paintRuns,
  paintLikelihood,
  paintClips,
  paintRubSpots,
  paintNodes,
  paintNames,
  paintRanks,
];

/** Few shapes with one scene function each: the ground seldom changes, the top follows the pointer. */
const groundPainters: readonly Painter[] = [paintGrid, paintUnderlays, ...groundMarks];
const topPainters: readonly Painter[] = [paintSelection, paintOverlay];

export interface BoardStage {
  readonly resize: (widthPx: number, heightPx: number) => void;
  /** Draws what differs from the scene shown before. */
  readonly show: (scene: Scene) => void;
  readonly destroy: () => void;
}

/** Puts the canvases into an element and draws scenes on them. */
export function boardStage(container: HTMLDivElement): BoardStage {
  const stage = new Konva.Stage({ container, width: 1, height: 1, listening: false });
  let shown: Scene | null = null;
  const layerOf = (painters: readonly Painter[]): Konva.Layer => {
    const layer = new Konva.Layer({ listening: false });
    const shape = new Konva.Shape({
      listening: false,
      perfectDrawEnabled: false,
      sceneFunc: (context) => {
        const scene = shown;
        if (!scene) return;
        const start = performance.now();
        for (const paint of painters) paint(context._context as CanvasRenderingContext2D, scene);
        // Whoever watches hears of it; nothing is kept.
        performance.measure('board-draw', { start, end: performance.now() });
        performance.clearMeasures('board-draw');
      },
    });
    layer.add(shape);
    stage.add(layer);
    return layer;
  };
  const ground = layerOf(groundPainters);
  const top = layerOf(topPainters);
  return {
    resize: (widthPx, heightPx) => stage.size({ width: widthPx, height: heightPx }),
    show: (scene) => {
      const before = shown;
      shown = scene;
      const groundSame =
        before !== null &&
        before.map === scene.map &&
        before.camera === scene.camera &&
        before.size === scene.size &&
        before.colours === scene.colours &&
        before.lit === scene.lit &&
        before.underlays === scene.underlays &&
        before.fontFamily === scene.fontFamily;
      if (!groundSame) ground.batchDraw();
      top.batchDraw();
    },
    destroy: () => stage.destroy(),
  };
}
