import { type Bounds, boundsOf, joinedBounds } from '#core/geometry/bounds.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { boardIndex } from '../board/board-index.ts';
import { type Camera, fitCamera, toScreen } from '../board/camera.ts';
import type { Lit } from '../board/lit.ts';
import { outlineLine } from '../board/outline-line.ts';
import { emptyOverlay } from '../board/overlay.ts';
import { paintClips } from '../board/paint/clips.ts';
import { paintLikelihood } from '../board/paint/likelihood.ts';
import { paintNames } from '../board/paint/names.ts';
import { paintNodes } from '../board/paint/nodes.ts';
import { paintOutlines } from '../board/paint/outlines.ts';
import { paintRubSpots } from '../board/paint/rub-spots.ts';
import { paintRuns } from '../board/paint/runs.ts';
import { runLine } from '../board/run-line.ts';
import { scaleBarLength } from '../board/scale-bar.tsx';
import { type Painter, sceneOf } from '../board/scene.ts';
import type { LengthSystem } from '../language/say-length.ts';
import type { BoardColours } from '../theme/tokens.ts';
import { escapeXml } from './escape-xml.ts';
import { guessedTextWidth, SvgPen, type TextMeasure } from './svg-pen.ts';

export interface MapSvgOptions {
  /** Length of the drawing's longer side, in px of the SVG; the other follows the map. */
  readonly longSidePx?: number;
  readonly lengths?: LengthSystem;
  readonly fontFamily?: string;
  /** How wide text is set in that family, where a browser is at hand to ask. */
  readonly measure?: TextMeasure;
  /** False where the map's name stands beside the drawing already. */
  readonly titled?: boolean;
  /** Stands under the title, such as the date; nothing otherwise. */
  readonly subtitle?: string;
  /** Circuit and marks of a job; nothing is lit when absent. */
  readonly lit?: Lit | null;
}

const usualLongSidePx = 1_800;
const marginPx = 48;
const titlePx = 22;
const subtitlePx = 14;
/** Room above the drawing for the title, and below it for the scale bar. */
const headPx = 72;
const footPx = 56;

/** The board's own painters, in its drawing order; panels come first, by `drawPanels`. */
const painters: readonly Painter[] = [
  paintOutlines,
  paintRuns,
  paintLikelihood,
  paintClips,
  paintRubSpots,
  paintNodes,
  paintNames,
];

/**
 * A map as an SVG drawing (W3C SVG 1.1) with the marks of the board: panels hatched and named, outlines, routes,
 * clips, rub spots and nodes with their names, a title and a scale bar. Seen from above with the front to the left. The
 * same map and options always give the same text.
 */
export function mapSvg(map: MapDocument, colours: BoardColours, options: MapSvgOptions = {}): string {
  const {
    longSidePx = usualLongSidePx,
    lengths = 'metric',
    fontFamily = 'sans-serif',
    subtitle = '',
    titled = true,
  } = options;
  const box = mapBounds(map);
  const topPx = titled ? headPx : 0;
  const size = sheetSize(box, longSidePx, topPx);
  const fitted = fitCamera(
    box,
    { widthPx: size.widthPx, heightPx: size.heightPx - topPx - footPx },
    marginPx,
  );
  const camera: Camera = { ...fitted, yPx: fitted.yPx + topPx };
  const scene = sceneOf({
    index: boardIndex(map),
    camera,
    size,
    colours,
    lit: options.lit ?? null,
    selection: [],
    hover: null,
    overlay: emptyOverlay,
    fontFamily,
  });
  const pen = new SvgPen(options.measure ?? guessedTextWidth);
  pen.fillStyle = colours.paper;
  pen.fillRect(0, 0, size.widthPx, size.heightPx);
  drawPanels(pen, scene.panels, camera, colours);
  for (const paint of painters) paint(pen.context, scene);
  if (titled) drawTitle(pen, map.details.name, subtitle, fontFamily, colours);
  drawScaleBar(pen, camera, size.heightPx, lengths, fontFamily, colours);
  const title = escapeXml(map.details.name);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${size.widthPx}" height="${size.heightPx}" viewBox="0 0 ${size.widthPx} ${size.heightPx}" role="img" aria-label="${title}">`,
    `<title>${title}</title>`,
    `<defs>${hatch('hatch-up', 1, camera, colours)}${hatch('hatch-down', -1, camera, colours)}</defs>`,
    pen.drawn,
    '</svg>',
    '',
  ].join('\n');
}

/** Everything drawn; a car's length of paper where nothing is. */
function mapBounds(map: MapDocument): Bounds {
  let all: Bounds | null = null;
  const take = (bounds: Bounds | null): void => {
    if (bounds) all = all ? joinedBounds(all, bounds) : bounds;
  };
  for (const outline of map.outlines.values()) take(boundsOf(outlineLine(outline)));
  for (const panel of map.panels.values()) take(boundsOf(panel.area));
  for (const spot of map.rubSpots.values()) take(boundsOf(spot.points));
  for (const segment of map.segments.values()) take(boundsOf(runLine(map, segment)?.points ?? []));
  take(boundsOf([...map.nodes.values()].map((node) => node.at)));
  return all ?? { minXMm: 0, maxXMm: 4_500, minYMm: -900, maxYMm: 900 };
}

/** The size of the drawing, and how many of its px a millimetre on the car takes up, before it is enlarged. */
export function mapSvgSize(
  map: MapDocument,
  longSidePx = usualLongSidePx,
): { readonly widthPx: number; readonly heightPx: number; readonly pxPerMm: number } {
  const box = mapBounds(map);
  return { ...sheetSize(box, longSidePx, headPx), pxPerMm: sheetPxPerMm(box, longSidePx) };
}

function sheetPxPerMm(box: Bounds, longSidePx: number): number {
  return (longSidePx - 2 * marginPx) / Math.max(1, box.maxXMm - box.minXMm, box.maxYMm - box.minYMm);
}

function sheetSize(box: Bounds, longSidePx: number, topPx: number): { widthPx: number; heightPx: number } {
  const widthMm = Math.max(1, box.maxXMm - box.minXMm);
  const heightMm = Math.max(1, box.maxYMm - box.minYMm);
  const scale = sheetPxPerMm(box, longSidePx);
  // Narrow drawings still need room for their title.
  const widthPx = Math.max(640, Math.round(widthMm * scale + 2 * marginPx));
  return { widthPx, heightPx: Math.round(heightMm * scale + 2 * marginPx) + topPx + footPx };
}

/** The lean of the hatch follows the panel's order as on the board, so that an overlap shows as a lattice. */
function drawPanels(
  pen: SvgPen,
  panels: readonly { readonly order: number; readonly area: readonly { xMm: number; yMm: number }[] }[],
  camera: Camera,
  colours: BoardColours,
): void {
  pen.lineJoin = 'round';
  pen.lineWidth = 1;
  pen.strokeStyle = colours.faint;
  for (const { area, order } of panels) {
    if (area.length < 3) continue;
    pen.beginPath();
    for (const corner of area) {
      const at = toScreen(camera, corner);
      pen.lineTo(at.xPx, at.yPx);
    }
    pen.closePath();
    pen.fillStyle = order % 2 === 0 ? 'url(#hatch-up)' : 'url(#hatch-down)';
    pen.fill();
    pen.stroke();
  }
}

const tilePx = 9;

/** Thin slanting lines, three to a tile so that the corners of neighbouring tiles meet without a gap. */
function hatch(id: string, slant: 1 | -1, camera: Camera, colours: BoardColours): string {
  const lines = [-tilePx, 0, tilePx].map((shift) => {
    const [from, to] = slant > 0 ? [tilePx + 1, -1] : [-1, tilePx + 1];
    return `M${shift - 1} ${from}L${shift + tilePx + 1} ${to}`;
  });
  const shift = `translate(${(camera.xPx % tilePx).toFixed(2)} ${(camera.yPx % tilePx).toFixed(2)})`;
  return `<pattern id="${id}" width="${tilePx}" height="${tilePx}" patternUnits="userSpaceOnUse" patternTransform="${shift}"><path d="${lines.join('')}" fill="none" stroke="${colours.panelHatch}" stroke-width="1"/></pattern>`;
}

function drawTitle(
  pen: SvgPen,
  name: string,
  subtitle: string,
  fontFamily: string,
  colours: BoardColours,
): void {
  pen.textAlign = 'left';
  pen.textBaseline = 'alphabetic';
  pen.globalAlpha = 1;
  pen.font = `bold ${titlePx}px ${fontFamily}`;
  pen.fillStyle = colours.ink;
  pen.fillText(name, marginPx, marginPx - 8);
  if (subtitle === '') return;
  pen.font = `${subtitlePx}px ${fontFamily}`;
  pen.fillStyle = colours.quiet;
  pen.fillText(subtitle, marginPx, marginPx + 14);
}

function drawScaleBar(
  pen: SvgPen,
  camera: Camera,
  heightPx: number,
  lengths: LengthSystem,
  fontFamily: string,
  colours: BoardColours,
): void {
  const { widthPx, value, unit } = scaleBarLength(camera.pxPerMm, lengths);
  const yPx = heightPx - footPx / 2 + 6;
  pen.setLineDash([]);
  pen.lineCap = 'butt';
  pen.lineJoin = 'miter';
  pen.lineWidth = 1.5;
  pen.strokeStyle = colours.ink;
  pen.beginPath();
  pen.moveTo(marginPx, yPx - 6);
  pen.lineTo(marginPx, yPx);
  pen.lineTo(marginPx + widthPx, yPx);
  pen.lineTo(marginPx + widthPx, yPx - 6);
  pen.stroke();
  pen.font = `13px ${fontFamily}`;
  pen.fillStyle = colours.ink;
  pen.fillText(`${value} ${unit}`, marginPx, yPx - 12);
}
