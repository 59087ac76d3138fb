import type { OutlineKind } from '#core/map/kinds.ts';
import { outlineLine } from '../outline-line.ts';
import type { Painter } from '../scene.ts';
import { traceLine } from './trace-line.ts';

const widthPx: Readonly<Record<OutlineKind, number>> = {
  shell: 2.4,
  pillar: 1.8,
  sill: 1.4,
  seat: 1.4,
  arch: 1.4,
  other: 1.2,
};

/** Graphite outlines: the shell heaviest, what is inside it lighter. */
export const paintOutlines: Painter = (c, { outlines, camera, colours, lit }) => {
  c.lineJoin = 'round';
  c.lineCap = 'round';
  c.strokeStyle = colours.graphite;
  c.globalAlpha = lit ? 0.75 : 1;
  for (const outline of outlines) {
    c.lineWidth = widthPx[outline.kind];
    c.beginPath();
    traceLine(c, camera, outlineLine(outline), outline.closed);
    c.stroke();
  }
  c.globalAlpha = 1;
};
