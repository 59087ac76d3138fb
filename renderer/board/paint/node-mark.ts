import type { NodeKind } from '#core/map/kinds.ts';
import type { ScreenPoint } from '../camera.ts';

/** Strokes and fills one node mark about `r` pixels in radius; stroke and fill styles are set by the caller. */
export function drawNodeMark(c: CanvasRenderingContext2D, kind: NodeKind, at: ScreenPoint, r: number): void {
  c.lineWidth = 2;
  c.lineJoin = 'miter';
  c.lineCap = 'butt';
  marks[kind](c, at.xPx, at.yPx, r);
}

type Mark = (c: CanvasRenderingContext2D, x: number, y: number, r: number) => void;

/** Paper under the mark, so that the run does not show through it. */
const clearDisc = (c: CanvasRenderingContext2D, x: number, y: number, r: number): void => {
  c.beginPath();
  c.arc(x, y, r, 0, Math.PI * 2);
  c.fill();
};

const solid = (c: CanvasRenderingContext2D): void => {
  const paper = c.fillStyle;
  c.fillStyle = c.strokeStyle;
  c.fill();
  c.fillStyle = paper;
};

const box = (c: CanvasRenderingContext2D, x: number, y: number, halfX: number, halfY: number): void => {
  c.beginPath();
  c.rect(x - halfX, y - halfY, halfX * 2, halfY * 2);
  c.fill();
  c.stroke();
};

const strokes = (c: CanvasRenderingContext2D, ...lines: readonly (readonly number[])[]): void => {
  c.beginPath();
  for (const [x1, y1, x2, y2] of lines as readonly (readonly [number, number, number, number])[]) {
    c.moveTo(x1, y1);
    c.lineTo(x2, y2);
  }
  c.stroke();
};

const marks: Readonly<Record<NodeKind, Mark>> = {
  branch: (c, x, y, r) => {
    c.beginPath();
    c.moveTo(x - r * 0.62, y);
    c.lineTo(x, y - r * 0.62);
    c.lineTo(x + r * 0.62, y);
    c.lineTo(x, y + r * 0.62);
    c.closePath();
    solid(c);
  },
  'inline-connector': (c, x, y, r) => {
    clearDisc(c, x, y, r);
    for (const side of [-1, 1]) {
      c.beginPath();
      c.rect(x + side * r * 0.5 - r * 0.28, y - r, r * 0.56, r * 2);
      solid(c);
    }
  },
  splice: (c, x, y, r) => {
    c.beginPath();
    c.arc(x, y, r * 0.62, 0, Math.PI * 2);
    solid(c);
  },
  'ground-point': (c, x, y, r) => {
    clearDisc(c, x, y, r * 1.1);
    strokes(
      c,
      [x - r, y - r * 0.5, x + r, y - r * 0.5],
      [x - r * 0.65, y + r * 0.1, x + r * 0.65, y + r * 0.1],
      [x - r * 0.3, y + r * 0.7, x + r * 0.3, y + r * 0.7],
    );
  },
  grommet: (c, x, y, r) => {
    clearDisc(c, x, y, r * 0.9);
    c.stroke();
    c.beginPath();
    c.arc(x, y, r * 0.38, 0, Math.PI * 2);
    c.stroke();
  },
  module: (c, x, y, r) => {
    box(c, x, y, r, r);
    strokes(c, [x - r, y + r * 0.45, x + r, y + r * 0.45]);
  },
  switch: (c, x, y, r) => {
    box(c, x, y, r, r * 0.75);
    strokes(c, [x - r * 0.5, y + r * 0.3, x + r * 0.5, y - r * 0.35]);
  },
  sensor: (c, x, y, r) => {
    c.beginPath();
    c.moveTo(x, y - r * 1.05);
    c.lineTo(x + r, y + r * 0.8);
    c.lineTo(x - r, y + r * 0.8);
    c.closePath();
    c.fill();
    c.stroke();
  },
  load: (c, x, y, r) => {
    clearDisc(c, x, y, r);
    c.stroke();
    const half = r * 0.7;
    strokes(c, [x - half, y - half, x + half, y + half], [x - half, y + half, x + half, y - half]);
  },
  'fuse-box': (c, x, y, r) => {
    box(c, x, y, r * 1.25, r * 0.8);
    strokes(
      c,
      [x - r * 0.4, y - r * 0.8, x - r * 0.4, y + r * 0.8],
      [x + r * 0.4, y - r * 0.8, x + r * 0.4, y + r * 0.8],
    );
  },
  'loose-end': (c, x, y, r) => {
    strokes(c, [x - r * 0.7, y - r * 0.7, x, y], [x - r * 0.7, y + r * 0.7, x, y], [x - r, y, x, y]);
  },
};
