import type { Segment } from '#core/map/records.ts';
import { runLine } from '../run-line.ts';
import type { Painter, Scene } from '../scene.ts';
import { strokeLines } from './trace-line.ts';

/** How wide a run is drawn: as thick as it is, within what a screen can show. */
export function runWidthPx(scene: Pick<Scene, 'camera' | 'crowded'>, segment: Segment): number {
  // One device pixel is what a browser paints fast, and all that thousands of lines leave room for.
  if (scene.crowded) return 1 / (globalThis.devicePixelRatio || 1);
  const drawn = (segment.bundleDiameterMm ?? 8) * scene.camera.pxPerMm;
  return Math.min(9, Math.max(scene.camera.pxPerMm < 0.06 ? 1 : 2.4, drawn));
}

/** Runs in one tone, batched by width; those not yet checked on a car are dashed. */
export const paintRuns: Painter = (c, scene) => {
  const { camera, colours, lit, map } = scene;
  c.lineJoin = 'round';
  c.lineCap = 'round';
  c.strokeStyle = lit ? colours.faint : colours.ink;
  c.globalAlpha = lit ? 0.7 : 1;
  const batches = new Map<string, Segment[]>();
  for (const segment of scene.segments) {
    if (lit?.circuitSegments.has(segment.id)) continue;
    const width = lit
      ? 1.3
      : scene.crowded
        ? runWidthPx(scene, segment)
        : Math.round(runWidthPx(scene, segment) * 2) / 2;
    const key = `${width}${segment.unchecked ? ' dashed' : ''}`;
    const batch = batches.get(key);
    if (batch) batch.push(segment);
    else batches.set(key, [segment]);
  }
  for (const [key, batch] of batches) {
    c.lineWidth = Number.parseFloat(key);
    c.setLineDash(key.endsWith('dashed') ? [8, 5] : []);
    strokeLines(
      c,
      camera,
      batch.flatMap((segment) => {
        const line = runLine(map, segment);
        return line ? [line.points] : [];
      }),
    );
  }
  c.setLineDash([]);
  c.globalAlpha = 1;
};
