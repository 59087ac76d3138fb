import { indexBox } from './board-index.ts';
import type { Sheet } from './board-sheet.ts';
import { type Camera, fitCamera } from './camera.ts';
import { sameLook } from './ground.ts';
import { paintPaper } from './paint/grid.ts';
import { paintOutlines } from './paint/outlines.ts';
import { paintPanels } from './paint/panels.ts';
import { paintRuns } from './paint/runs.ts';
import { paintUnderlays } from './paint/underlays.ts';
import { type PaintWork, paintWork } from './paint-work.ts';
import { type Painter, type SceneInput, sceneOf } from './scene.ts';

/** A coarse picture of the whole drawing. */
export interface FarView {
  /** Paints on while nothing else is to be done. */
  readonly paint: (wanted: SceneInput, untilMs: number) => void;
  readonly unfinished: (wanted: SceneInput) => boolean;
  /** Shows it where the view has it now; null puts it out of sight. */
  readonly lay: (camera: Camera | null) => void;
}

/** What makes a place known at a glance. No grid: stretched, its lines would be bars. */
const painters: readonly Painter[] = [paintPaper, paintUnderlays, paintPanels, paintOutlines, paintRuns];

/** The whole drawing as large as the board, to lie under the ground where a quick hand outruns it. */
export function farView(sheet: Sheet): FarView {
  let painted: { readonly input: SceneInput; readonly camera: Camera } | null = null;
  let next: { readonly input: SceneInput; readonly camera: Camera; readonly work: PaintWork } | null = null;

  const holds = (input: SceneInput | undefined, wanted: SceneInput): boolean =>
    input !== undefined && input.index === wanted.index && sameLook(input, wanted);

  const begin = (input: SceneInput): void => {
    const box = indexBox(input.index);
    if (!box) return;
    const camera = fitCamera(box, input.size, 0);
    sheet.clear(input.size);
    // On the one sheet there is, the new picture grows in place of the old.
    painted = null;
    next = { input, camera, work: paintWork(sheet, sceneOf({ ...input, camera }), painters) };
  };

  return {
    unfinished: (wanted) => {
      if (holds((next ?? painted)?.input, wanted)) return next !== null;
      return indexBox(wanted.index) !== null;
    },
    paint: (wanted, untilMs) => {
      if (!holds((next ?? painted)?.input, wanted)) begin(wanted);
      if (!next) return;
      next.work.go(untilMs);
      if (!next.work.done()) return;
      painted = next;
      next = null;
    },
    lay: (camera) => {
      const at = (next ?? painted)?.camera;
      if (!camera || !at) {
        sheet.lay(null);
        return;
      }
      const stretched = camera.pxPerMm / at.pxPerMm;
      sheet.lay({ xPx: camera.xPx - stretched * at.xPx, yPx: camera.yPx - stretched * at.yPx, stretched });
    },
  };
}
