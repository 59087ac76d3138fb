import type { Sheet } from './board-sheet.ts';
import { type PaintStep, paintPlan } from './paint-plan.ts';
import type { Painter, Scene } from './scene.ts';

/** A picture that is painted a little at a time. */
export interface PaintWork {
  /** Paints step by step until a moment of `performance.now()`; at least one step. */
  readonly go: (untilMs: number) => void;
  readonly done: () => boolean;
}

/** Paints a scene on a sheet in short steps. */
export function paintWork(sheet: Sheet, scene: Scene, painters?: readonly Painter[]): PaintWork {
  const steps = paintPlan(scene, painters);
  let at = 0;
  return {
    done: () => at === steps.length,
    go: (untilMs) =>
      sheet.paint((c) => {
        do {
          const step: PaintStep | undefined = steps[at];
          if (!step) return;
          step.paint(c, step.scene);
          at++;
        } while (performance.now() < untilMs);
      }),
  };
}
