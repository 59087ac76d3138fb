import type { MapNode } from '#core/map/records.ts';
import { toScreen } from '../camera.ts';
import type { Painter, Scene } from '../scene.ts';
import { markScale } from './mark-scale.ts';
import { drawNodeMark } from './node-mark.ts';

/** Far out only dots are left of the marks. */
const farPxPerMm = 0.07;

/** Marks of plugs, pass-throughs, splices and what the loom ends at. */
export const paintNodes: Painter = (c, scene) => {
  const { lit, map, nodes } = scene;
  const onCircuit = new Set<string>();
  for (const id of lit?.circuitSegments ?? []) {
    const segment = map.segments.get(id);
    if (segment) onCircuit.add(segment.fromNodeId).add(segment.toNodeId);
  }
  for (const node of nodes) {
    if (scene.crowded && node.kind === 'branch') continue;
    paintNode(c, scene, node, lit !== null && !onCircuit.has(node.id));
  }
};

/** One node's mark; a quiet one is smaller and paler. */
export function paintNode(c: CanvasRenderingContext2D, scene: Scene, node: MapNode, quiet: boolean): void {
  const { camera, colours } = scene;
  const far = camera.pxPerMm < farPxPerMm || scene.crowded;
  const radius = 4.5 + 4.5 * markScale(camera);
  c.strokeStyle = quiet ? colours.faint : colours.ink;
  c.fillStyle = far ? c.strokeStyle : colours.paper;
  const at = toScreen(camera, node.at);
  if (far) c.fillRect(at.xPx - 1.5, at.yPx - 1.5, 3, 3);
  else drawNodeMark(c, node.kind, at, quiet ? radius * 0.75 : radius);
}
