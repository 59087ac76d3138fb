import type { PlanPoint } from '#core/geometry/place.ts';
import { idKind } from '#core/quantity/id.ts';
import { toScreen } from '../camera.ts';
import { handlesOf } from '../handles.ts';
import { outlineLine } from '../outline-line.ts';
import { runLine } from '../run-line.ts';
import { runOfClip } from '../run-of-clip.ts';
import type { Painter, Scene } from '../scene.ts';
import { paintNode } from './nodes.ts';
import { directionAt } from './stretch-points.ts';
import { traceLine } from './trace-line.ts';

/** What is picked gets a firm casing and its corners; what is under the pointer a thin one. */
export const paintSelection: Painter = (c, scene) => {
  c.lineJoin = 'round';
  c.lineCap = 'round';
  if (scene.hover && !scene.selection.has(scene.hover)) {
    c.globalAlpha = 0.35;
    paintCasing(c, scene, scene.hover, 9);
    c.globalAlpha = 1;
  }
  for (const id of scene.selection) paintCasing(c, scene, id, 7);
  if (scene.selection.size > 12) return;
  c.lineWidth = 1.6;
  for (const { at } of handlesOf(scene.map, [...scene.selection])) {
    const { xPx, yPx } = toScreen(scene.camera, at);
    c.fillStyle = scene.colours.paper;
    c.strokeStyle = scene.colours.ink;
    c.beginPath();
    c.rect(xPx - 4.5, yPx - 4.5, 9, 9);
    c.fill();
    c.stroke();
  }
};

function paintCasing(c: CanvasRenderingContext2D, scene: Scene, id: string, widthPx: number): void {
  const { map, camera, colours } = scene;
  c.strokeStyle = colours.ink;
  const line = (points: readonly PlanPoint[], closed: boolean): void => {
    c.beginPath();
    traceLine(c, camera, points, closed);
    c.lineWidth = widthPx + 2;
    c.stroke();
    c.strokeStyle = colours.paper;
    c.lineWidth = widthPx - 2;
    c.stroke();
    c.strokeStyle = colours.ink;
    c.lineWidth = 2;
    c.stroke();
  };
  const ring = (at: PlanPoint, radiusPx: number): void => {
    const { xPx, yPx } = toScreen(camera, at);
    c.beginPath();
    c.arc(xPx, yPx, radiusPx, 0, Math.PI * 2);
    c.lineWidth = 2.2;
    c.stroke();
  };
  switch (idKind(id)) {
    case 'segment': {
      const segment = map.segments.get(id as `segment:${string}`);
      const run = segment && runLine(map, segment);
      if (!segment || !run) return;
      line(run.points, false);
      // The casing lies over the marks at its ends, so they are drawn once more.
      for (const nodeId of [segment.fromNodeId, segment.toNodeId]) {
        const node = map.nodes.get(nodeId);
        if (node) paintNode(c, scene, node, false);
      }
      return;
    }
    case 'outline': {
      const outline = map.outlines.get(id as `outline:${string}`);
      if (outline) line(outlineLine(outline), outline.closed);
      return;
    }
    case 'panel': {
      const panel = map.panels.get(id as `panel:${string}`);
      if (!panel) return;
      c.beginPath();
      traceLine(c, camera, panel.area, true);
      c.lineWidth = 2.6;
      c.stroke();
      return;
    }
    case 'rub-spot': {
      const spot = map.rubSpots.get(id as `rub-spot:${string}`);
      if (spot && spot.shape === 'point') ring(spot.points[0] as PlanPoint, 15);
      else if (spot) {
        c.beginPath();
        traceLine(c, camera, spot.points, spot.shape === 'area');
        c.lineWidth = 3;
        c.stroke();
      }
      return;
    }
    case 'node': {
      const node = map.nodes.get(id as `node:${string}`);
      if (node) ring(node.at, 14);
      return;
    }
    case 'circuit': {
      for (const step of map.circuits.get(id as `circuit:${string}`)?.path ?? []) {
        paintCasing(c, scene, step.segmentId, widthPx);
      }
      return;
    }
    case 'clip': {
      const segment = runOfClip(map, id);
      const clip = segment?.clips.find((each) => each.id === id);
      const run = segment && runLine(map, segment);
      if (clip && run) ring(directionAt(run, clip.stationMm).at, 11);
      return;
    }
  }
}
