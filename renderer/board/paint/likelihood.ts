import type { StationLine } from '#core/geometry/station-line.ts';
import { toScreen } from '../camera.ts';
import type { LitMark } from '../lit.ts';
import { runLine } from '../run-line.ts';
import type { Painter, Scene } from '../scene.ts';
import { levelTone, levelWidthPx } from './level-style.ts';
import { directionAt, stretchPoints } from './stretch-points.ts';
import { traceLine } from './trace-line.ts';

/** The traced circuit by likelihood, then what was seen on it, then what is pointed at. */
export const paintLikelihood: Painter = (c, scene) => {
  const { lit, map } = scene;
  if (!lit) return;
  c.lineJoin = 'round';
  for (const id of lit.circuitSegments) {
    const segment = map.segments.get(id);
    const line = segment && runLine(map, segment);
    if (!line) continue;
    c.lineCap = 'round';
    strokeStretch(c, scene, line, 0, line.lengthMm, scene.colours.graphite, 2);
    c.lineCap = 'butt';
    const rising = [...(lit.stretches.get(id) ?? [])].sort((a, b) => a.level - b.level);
    for (const { fromMm, toMm, level } of rising) {
      const tone = levelTone(scene.colours.accent, level);
      strokeStretch(c, scene, line, fromMm, toMm, tone, levelWidthPx(level));
    }
  }
  for (const mark of lit.marks) paintMark(c, scene, mark);
  for (const { segmentId, fromMm, toMm } of lit.pointed) {
    const segment = map.segments.get(segmentId);
    const line = segment && runLine(map, segment);
    if (line) paintPointed(c, scene, line, fromMm, toMm);
  }
};

function strokeStretch(
  c: CanvasRenderingContext2D,
  scene: Scene,
  line: StationLine,
  fromMm: number,
  toMm: number,
  tone: string,
  widthPx: number,
): void {
  c.strokeStyle = tone;
  c.lineWidth = widthPx;
  c.beginPath();
  traceLine(c, scene.camera, stretchPoints(line, fromMm, toMm));
  c.stroke();
}

/** Two thin lines alongside the stretch: it stands out without a colour of its own. */
function paintPointed(
  c: CanvasRenderingContext2D,
  scene: Scene,
  line: StationLine,
  fromMm: number,
  toMm: number,
): void {
  const points = stretchPoints(line, fromMm, toMm);
  c.lineCap = 'butt';
  for (const side of [-1, 1]) {
    c.strokeStyle = scene.colours.ink;
    c.lineWidth = 1.6;
    c.beginPath();
    for (let i = 0; i + 1 < points.length; i++) {
      const a = toScreen(scene.camera, points[i] as (typeof points)[number]);
      const b = toScreen(scene.camera, points[i + 1] as (typeof points)[number]);
      const length = Math.hypot(b.xPx - a.xPx, b.yPx - a.yPx) || 1;
      const ox = (-(b.yPx - a.yPx) / length) * 10 * side;
      const oy = ((b.xPx - a.xPx) / length) * 10 * side;
      if (i === 0) c.moveTo(a.xPx + ox, a.yPx + oy);
      else c.lineTo(a.xPx + ox, a.yPx + oy);
      c.lineTo(b.xPx + ox, b.yPx + oy);
    }
    c.stroke();
  }
}

export function paintMark(c: CanvasRenderingContext2D, scene: Scene, mark: LitMark): void {
  const segment = scene.map.segments.get(mark.segmentId);
  const line = segment && runLine(scene.map, segment);
  if (!line) return;
  if (mark.kind === 'clean') paintClean(c, scene, line, mark.fromMm, mark.toMm);
  else if (mark.kind === 'damaged-not-ours') paintNotch(c, scene, line, (mark.fromMm + mark.toMm) / 2);
  else paintFound(c, scene, line, mark.atMm);
}

/** Seen and sound: the stretch turns hollow, with small ticks across. */
function paintClean(
  c: CanvasRenderingContext2D,
  scene: Scene,
  line: StationLine,
  fromMm: number,
  toMm: number,
): void {
  c.lineCap = 'butt';
  strokeStretch(c, scene, line, fromMm, toMm, scene.colours.graphite, 7);
  strokeStretch(c, scene, line, fromMm, toMm, scene.colours.paper, 4);
  c.strokeStyle = scene.colours.graphite;
  c.lineWidth = 1.5;
  c.beginPath();
  const stepMm = 14 / scene.camera.pxPerMm;
  for (let mm = fromMm + stepMm / 2; mm < toMm; mm += stepMm) traceAcross(c, scene, line, mm, 6);
  c.stroke();
}

/** Damage that is not the cause: a notch cut into one side of the run. */
function paintNotch(c: CanvasRenderingContext2D, scene: Scene, line: StationLine, atMm: number): void {
  const { at, dx, dy } = directionAt(line, atMm);
  const { xPx, yPx } = toScreen(scene.camera, at);
  // Along the run and across it on the screen, where y grows downwards.
  const [ax, ay, nx, ny] = [dx, -dy, dy, dx];
  c.beginPath();
  c.moveTo(xPx - ax * 8 + nx * 11, yPx - ay * 8 + ny * 11);
  c.lineTo(xPx - nx * 3, yPx - ny * 3);
  c.lineTo(xPx + ax * 8 + nx * 11, yPx + ay * 8 + ny * 11);
  c.closePath();
  c.fillStyle = scene.colours.paper;
  c.fill();
  c.strokeStyle = scene.colours.ink;
  c.lineWidth = 2;
  c.stroke();
}

/** The fault itself: a point in two rings. */
function paintFound(c: CanvasRenderingContext2D, scene: Scene, line: StationLine, atMm: number): void {
  const { xPx, yPx } = toScreen(scene.camera, directionAt(line, atMm).at);
  c.fillStyle = scene.colours.paper;
  c.beginPath();
  c.arc(xPx, yPx, 13, 0, Math.PI * 2);
  c.fill();
  c.strokeStyle = scene.colours.ink;
  c.lineWidth = 2.5;
  c.stroke();
  c.beginPath();
  c.arc(xPx, yPx, 5, 0, Math.PI * 2);
  c.fillStyle = scene.colours.ink;
  c.fill();
}

function traceAcross(
  c: CanvasRenderingContext2D,
  scene: Scene,
  line: StationLine,
  stationMm: number,
  reachPx: number,
): void {
  const { at, dx, dy } = directionAt(line, stationMm);
  const { xPx, yPx } = toScreen(scene.camera, at);
  c.moveTo(xPx - dy * reachPx, yPx - dx * reachPx);
  c.lineTo(xPx + dy * reachPx, yPx + dx * reachPx);
}
