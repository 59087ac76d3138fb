import { toScreen } from '../camera.ts';
import type { OverlayLabel } from '../overlay.ts';
import type { Painter, Scene } from '../scene.ts';
import { traceLine } from './trace-line.ts';

/** What the drawing action under way shows: its lines, its points, its live figures. */
export const paintOverlay: Painter = (c, scene) => {
  const { overlay, camera, colours } = scene;
  c.lineJoin = 'round';
  c.lineCap = 'round';
  for (const { points, closed, style } of overlay.lines) {
    c.strokeStyle = colours.ink;
    const band = style === 'band' || style === 'thin-band';
    c.lineWidth = style === 'measure' ? 1.4 : style === 'band' ? 16 : style === 'thin-band' ? 9 : 2;
    c.globalAlpha = band ? 0.3 : 1;
    c.setLineDash(style === 'firm' || band ? [] : [2, 6]);
    c.beginPath();
    traceLine(c, camera, points, closed);
    c.stroke();
  }
  c.globalAlpha = 1;
  c.setLineDash([]);
  for (const { at, style } of overlay.points) {
    const { xPx, yPx } = toScreen(camera, at);
    c.strokeStyle = colours.ink;
    c.fillStyle = colours.paper;
    c.lineWidth = 1.8;
    c.beginPath();
    if (style === 'snap') c.arc(xPx, yPx, 11, 0, Math.PI * 2);
    else if (style === 'grip') c.arc(xPx, yPx, 5, 0, Math.PI * 2);
    else c.rect(xPx - 4, yPx - 4, 8, 8);
    if (style !== 'snap') c.fill();
    c.stroke();
  }
  if (overlay.box) {
    const a = toScreen(camera, { xMm: overlay.box.minXMm, yMm: overlay.box.maxYMm });
    const b = toScreen(camera, { xMm: overlay.box.maxXMm, yMm: overlay.box.minYMm });
    c.strokeStyle = colours.ink;
    c.lineWidth = 1;
    c.setLineDash([5, 4]);
    c.strokeRect(a.xPx, a.yPx, b.xPx - a.xPx, b.yPx - a.yPx);
    c.setLineDash([]);
  }
  for (const label of overlay.labels) paintLabel(c, scene, label);
};

function paintLabel(c: CanvasRenderingContext2D, scene: Scene, { at, text, unit }: OverlayLabel): void {
  const { xPx, yPx } = toScreen(scene.camera, at);
  c.textBaseline = 'middle';
  c.textAlign = 'left';
  c.font = `bold 15px ${scene.fontFamily}`;
  const figure = c.measureText(text).width;
  c.font = `14px ${scene.fontFamily}`;
  const whole = figure + (unit ? c.measureText(` ${unit}`).width : 0);
  // Beside the pointer, and never off the board.
  const x = Math.max(8, Math.min(xPx + 16, scene.size.widthPx - whole - 12));
  const y = Math.max(16, Math.min(yPx + 20, scene.size.heightPx - 16));
  c.fillStyle = scene.colours.paper;
  c.globalAlpha = 0.9;
  c.fillRect(x - 5, y - 12, whole + 10, 24);
  c.globalAlpha = 1;
  c.font = `bold 15px ${scene.fontFamily}`;
  c.fillStyle = scene.colours.ink;
  c.fillText(text, x, y);
  c.font = `14px ${scene.fontFamily}`;
  c.fillStyle = scene.colours.graphite;
  if (unit) c.fillText(` ${unit}`, x + figure, y);
}
