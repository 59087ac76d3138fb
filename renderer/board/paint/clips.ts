import type { Clip } from '#core/map/records.ts';
import { toScreen } from '../camera.ts';
import { runLine } from '../run-line.ts';
import type { Painter, Scene } from '../scene.ts';
import { markScale } from './mark-scale.ts';
import { runWidthPx } from './runs.ts';
import { directionAt } from './stretch-points.ts';

/** Fixings: a bar across the run; one that is gone is only two dots where it was. */
export const paintClips: Painter = (c, scene) => {
  if (scene.camera.pxPerMm < 0.09 || scene.crowded) return;
  c.strokeStyle = scene.lit ? scene.colours.faint : scene.colours.ink;
  c.fillStyle = c.strokeStyle;
  c.lineCap = 'butt';
  // Far out the bars shrink with the drawing, or a well held run would look like a comb.
  const near = markScale(scene.camera);
  c.lineWidth = 1 + 2 * near;
  c.beginPath();
  for (const segment of scene.segments) {
    if (segment.clips.length === 0) continue;
    const quiet = scene.lit !== null && !scene.lit.circuitSegments.has(segment.id);
    if (quiet) continue;
    const line = runLine(scene.map, segment);
    if (!line) continue;
    for (const clip of segment.clips) {
      const place = directionAt(line, clip.stationMm);
      const reachPx = runWidthPx(scene, segment) / 2 + 1 + 3 * near;
      traceClip(c, scene, clip, place, reachPx);
    }
  }
  c.stroke();
};

function traceClip(
  c: CanvasRenderingContext2D,
  scene: Scene,
  clip: Clip,
  place: ReturnType<typeof directionAt>,
  reachPx: number,
): void {
  const at = toScreen(scene.camera, place.at);
  // Across the run on the screen, where y grows downwards.
  const acrossX = place.dy * reachPx;
  const acrossY = place.dx * reachPx;
  if (clip.missing) {
    for (const side of [-1, 1]) {
      c.moveTo(at.xPx + acrossX * side * 1.25 - 1.5, at.yPx + acrossY * side * 1.25);
      c.lineTo(at.xPx + acrossX * side * 1.25 + 1.5, at.yPx + acrossY * side * 1.25);
    }
    return;
  }
  c.moveTo(at.xPx - acrossX, at.yPx - acrossY);
  c.lineTo(at.xPx + acrossX, at.yPx + acrossY);
}
