import { toPlan } from '../camera.ts';
import { paperStepMm } from '../grid-step.ts';
import type { Painter } from '../scene.ts';

/** Empty paper, to beyond the edges: a pixel of the canvas that is filled in part would show as a dark seam. */
export const paintPaper: Painter = (c, { size, colours }) => {
  c.fillStyle = colours.paper;
  c.fillRect(0, 0, size.widthPx + 1, size.heightPx + 1);
};

/** Paper with a millimetre grid: the finest step that does not turn grey, and ten of it drawn firmer. */
export const paintGrid: Painter = (c, scene) => {
  const { camera, size, colours } = scene;
  paintPaper(c, scene);
  const minorMm = paperStepMm(camera.pxPerMm);
  c.lineWidth = 1;
  for (const [stepMm, tone] of [
    [minorMm, colours.gridMinor],
    [minorMm * 10, colours.gridMajor],
  ] as const) {
    c.strokeStyle = tone;
    c.beginPath();
    const topLeft = toPlan(camera, { xPx: 0, yPx: 0 });
    const bottomRight = toPlan(camera, { xPx: size.widthPx, yPx: size.heightPx });
    for (let xMm = Math.ceil(topLeft.xMm / stepMm) * stepMm; xMm <= bottomRight.xMm; xMm += stepMm) {
      const x = Math.round(camera.xPx + xMm * camera.pxPerMm) + 0.5;
      c.moveTo(x, 0);
      c.lineTo(x, size.heightPx);
    }
    for (let yMm = Math.ceil(bottomRight.yMm / stepMm) * stepMm; yMm <= topLeft.yMm; yMm += stepMm) {
      const y = Math.round(camera.yPx - yMm * camera.pxPerMm) + 0.5;
      c.moveTo(0, y);
      c.lineTo(size.widthPx, y);
    }
    c.stroke();
  }
};
