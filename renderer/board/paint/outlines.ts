import type { OutlineKind } from '#core/map/kinds.ts';
import { outlineLine } from '../outline-line.ts';
import type { Painter } from '../scene.ts';
import { traceLine } from './trace-line.ts';

const widthPx: Readonly<Record<OutlineKind, number>> = {
  shell: 2.4,
  pillar: 1.3,
  sill: 1.2,
  seat: 1.2,
  arch: 1.2,
  other: 1,
};

/** Graphite outlines: the shell heaviest, what is inside it lighter. */
export const paintOutlines: Painter = (c, { outlines, camera, colours, lit }) => {
  c.lineJoin = 'round';
  c.lineCap = 'round';
  c.strokeStyle = colours.graphite;
  for (const outline of outlines) {
    c.lineWidth = widthPx[outline.kind];
    c.globalAlpha = (outline.kind === 'shell' ? 1 : 0.62) * (lit ? 0.8 : 1);
    c.beginPath();
    traceLine(c, camera, outlineLine(outline), outline.closed);
    c.stroke();
  }
  c.globalAlpha = 1;
};
