import { toScreen } from '../camera.ts';
import type { Painter } from '../scene.ts';
import { drawNodeMark } from './node-mark.ts';

/** Marks of plugs, pass-throughs, splices and what the loom ends at. Far out only dots are left. */
export const paintNodes: Painter = (c, { nodes, camera, colours, lit, map }) => {
  const far = camera.pxPerMm < 0.07;
  const onCircuit = new Set<string>();
  for (const id of lit?.circuitSegments ?? []) {
    const segment = map.segments.get(id);
    if (segment) onCircuit.add(segment.fromNodeId).add(segment.toNodeId);
  }
  const radius = Math.min(9, Math.max(5.5, camera.pxPerMm * 22));
  for (const node of nodes) {
    const quiet = lit !== null && !onCircuit.has(node.id);
    c.strokeStyle = quiet ? colours.faint : colours.ink;
    c.fillStyle = far ? c.strokeStyle : colours.paper;
    const at = toScreen(camera, node.at);
    if (far) c.fillRect(at.xPx - 1.5, at.yPx - 1.5, 3, 3);
    else drawNodeMark(c, node.kind, at, quiet ? radius * 0.75 : radius);
  }
};
