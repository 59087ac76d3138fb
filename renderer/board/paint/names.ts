import { boundsOf } from '#core/geometry/bounds.ts';
import { toScreen } from '../camera.ts';
import type { Painter, Scene } from '../scene.ts';
import { rankHalfHeightPx, rankPlaces } from './rank-places.ts';

interface Name {
  readonly text: string;
  readonly xPx: number;
  readonly yPx: number;
  readonly style: 'panel' | 'node' | 'quiet';
}

const sizePx = 13;
const nameGapPx = 13;

/** Short names of panels and nodes; a name that would lie on another is left out. Nearer names come first. */
export const paintNames: Painter = (c, scene) => {
  c.textBaseline = 'middle';
  c.textAlign = 'left';
  const taken: Strip[] = rankPlaces(scene).map(({ xPx, yPx, halfPx }) => ({
    leftPx: xPx - halfPx,
    rightPx: xPx + halfPx,
    topPx: yPx - rankHalfHeightPx,
    bottomPx: yPx + rankHalfHeightPx,
  }));
  for (const name of [...nodeNames(scene), ...panelNames(scene)]) {
    c.font = `${name.style === 'panel' ? 'italic ' : ''}${sizePx}px ${scene.fontFamily}`;
    const widthPx = c.measureText(name.text).width;
    const left =
      name.style === 'panel' ? name.xPx - widthPx / 2 : leftOfName(name.xPx, widthPx, scene.size.widthPx);
    const box = {
      leftPx: left - 3,
      rightPx: left + widthPx + 3,
      topPx: name.yPx - sizePx * 0.75,
      bottomPx: name.yPx + sizePx * 0.75,
    };
    if (taken.some((other) => touch(other, box))) continue;
    taken.push(box);
    // A strip of paper under the words: a run behind them would read as a stroke through.
    c.fillStyle = scene.colours.paper;
    c.globalAlpha = 0.82;
    c.fillRect(left - 2, name.yPx - sizePx * 0.62, widthPx + 4, sizePx * 1.2);
    c.globalAlpha = 1;
    c.fillStyle = name.style === 'node' ? scene.colours.ink : scene.colours.graphite;
    c.fillText(name.text, left, name.yPx);
  }
};

/** A node's name stands to its right, or to its left where the board ends. */
const leftOfName = (xPx: number, widthPx: number, boardPx: number): number =>
  xPx + widthPx > boardPx - 4 && xPx < boardPx ? xPx - 2 * nameGapPx - widthPx : xPx;

/** The place a name takes up on the screen. */
interface Strip {
  readonly leftPx: number;
  readonly rightPx: number;
  readonly topPx: number;
  readonly bottomPx: number;
}

const touch = (a: Strip, b: Strip): boolean =>
  a.leftPx < b.rightPx && b.leftPx < a.rightPx && a.topPx < b.bottomPx && b.topPx < a.bottomPx;

function panelNames({ panels, camera, lit, map }: Scene): Name[] {
  // In a job only the panels over the circuit matter, until one looks closer.
  const over = new Set<string>();
  for (const id of lit?.circuitSegments ?? []) {
    for (const tag of map.segments.get(id)?.tags ?? []) over.add(tag.panelId);
  }
  const all = lit === null || camera.pxPerMm >= 0.4;
  return panels.flatMap((panel) => {
    if (!all && !over.has(panel.id)) return [];
    const box = boundsOf(panel.area);
    if (!box) return [];
    const widthPx = (box.maxXMm - box.minXMm) * camera.pxPerMm;
    if (widthPx < panel.name.length * 5) return [];
    const at = toScreen(camera, {
      xMm: (box.minXMm + box.maxXMm) / 2,
      yMm: (box.minYMm + box.maxYMm) / 2,
    });
    return [{ text: panel.name, xPx: at.xPx, yPx: at.yPx, style: 'panel' as const }];
  });
}

function nodeNames({ nodes, camera, lit, map, selection, hover, crowded }: Scene): Name[] {
  const onCircuit = new Set<string>();
  for (const id of lit?.circuitSegments ?? []) {
    const segment = map.segments.get(id);
    if (segment) onCircuit.add(segment.fromNodeId).add(segment.toNodeId);
  }
  const close = camera.pxPerMm >= 0.16 && !crowded;
  return nodes
    .filter((node) => node.name !== '' && node.kind !== 'branch')
    .filter((node) => close || onCircuit.has(node.id) || selection.has(node.id) || hover === node.id)
    .filter((node) => lit === null || onCircuit.has(node.id) || camera.pxPerMm >= 0.4)
    .sort((a, b) => Number(onCircuit.has(b.id)) - Number(onCircuit.has(a.id)) || (a.id < b.id ? -1 : 1))
    .map((node) => {
      const at = toScreen(camera, node.at);
      const loud = lit === null || onCircuit.has(node.id);
      return { text: node.name, xPx: at.xPx + nameGapPx, yPx: at.yPx - 11, style: loud ? 'node' : 'quiet' };
    });
}
