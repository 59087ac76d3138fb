import { paintClips } from './paint/clips.ts';
import { paintGrid } from './paint/grid.ts';
import { paintLikelihood } from './paint/likelihood.ts';
import { nameLayout, paintNames } from './paint/names.ts';
import { paintNodes } from './paint/nodes.ts';
import { paintOutlines } from './paint/outlines.ts';
import { paintPanels } from './paint/panels.ts';
import { paintRanks } from './paint/ranks.ts';
import { paintRubSpots } from './paint/rub-spots.ts';
import { paintRuns } from './paint/runs.ts';
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

/** What can be fed to a painter piece by piece, and how much of it at once; others paint at one go. */
const pieces: ReadonlyMap<
  Painter,
  readonly [list: 'panels' | 'segments' | 'rubSpots' | 'nodes', most: number]
> = new Map([
  [paintPanels, ['panels', 4]],
  [paintRuns, ['segments', 64]],
  [paintClips, ['segments', 128]],
  [paintRubSpots, ['rubSpots', 32]],
  [paintNodes, ['nodes', 64]],
]);

/** One piece of painting, short enough that a frame can stop after it. */
export interface PaintStep {
  readonly paint: Painter;
  readonly scene: Scene;
}

/** The grid and all marks of a scene as short steps, in drawing order. Each record is in one step of each painter. */
export function paintPlan(
  scene: Scene,
  painters: readonly Painter[] = [paintGrid, paintUnderlays, ...groundMarks],
): PaintStep[] {
  return painters.flatMap((paint) => {
    if (paint === paintNames) return nameSteps(scene);
    const piece = pieces.get(paint);
    if (!piece) return [{ paint, scene }];
    const [list, most] = piece;
    const steps: PaintStep[] = [];
    for (let i = 0; i < scene[list].length; i += most) {
      steps.push({ paint, scene: { ...scene, [list]: scene[list].slice(i, i + most) } });
    }
    return steps;
  });
}

const namesAtOnce = 16;

function nameSteps(scene: Scene): PaintStep[] {
  const layout = nameLayout(scene);
  const names = scene.nodes.length + scene.panels.length;
  // With a margin a name may be tried twice.
  const most = scene.marginPx > 0 ? 2 * names : names;
  return Array.from({ length: Math.ceil(most / namesAtOnce) }, () => ({
    paint: (c) => layout.paintSome(c, namesAtOnce),
    scene,
  }));
}
