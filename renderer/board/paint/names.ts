import { boundsOf } from '#core/geometry/bounds.ts';
import { toScreen } from '../camera.ts';
import type { Painter, Scene } from '../scene.ts';
import { rankHalfHeightPx, rankPlaces } from './rank-places.ts';

/** A name with the left ends it may have, best first; the first free one is taken. */
interface Name {
  readonly text: string;
  readonly style: 'panel' | 'node' | 'quiet';
  readonly places: (widthPx: number) => readonly { readonly leftPx: number; readonly yPx: number }[];
}

/** The place something takes up on the screen. */
interface Strip {
  readonly leftPx: number;
  readonly rightPx: number;
  readonly topPx: number;
  readonly bottomPx: number;
}

const sizePx = 13;
/** From the middle of a mark to its name. */
const gapPx = 13;
const markReachPx = 8;

/** Short names of panels and nodes. A name never lies on a mark, a numeral or another name; without a free place it is left out. */
export const paintNames: Painter = (c, scene) => {
  c.textBaseline = 'middle';
  c.textAlign = 'left';
  const taken: Strip[] = [...numerals(scene), ...marks(scene)];
  for (const name of [...nodeNames(scene), ...panelNames(scene)]) {
    c.font = `${name.style === 'panel' ? 'italic ' : ''}${sizePx}px ${scene.fontFamily}`;
    const widthPx = c.measureText(name.text).width;
    const place = name.places(widthPx).find(({ leftPx, yPx }) => {
      const strip = stripOf(leftPx, yPx, widthPx);
      return inBoard(strip, scene) && !taken.some((other) => touch(other, strip));
    });
    if (!place) continue;
    taken.push(stripOf(place.leftPx, place.yPx, widthPx));
    // A strip of paper under the words: a run behind them would read as a stroke through.
    c.fillStyle = scene.colours.paper;
    c.globalAlpha = 0.82;
    c.fillRect(place.leftPx - 2, place.yPx - sizePx * 0.62, widthPx + 4, sizePx * 1.2);
    c.globalAlpha = 1;
    c.fillStyle = name.style === 'node' ? scene.colours.ink : scene.colours.graphite;
    c.fillText(name.text, place.leftPx, place.yPx);
  }
};

const stripOf = (leftPx: number, yPx: number, widthPx: number): Strip => ({
  leftPx: leftPx - 3,
  rightPx: leftPx + widthPx + 3,
  topPx: yPx - sizePx * 0.7,
  bottomPx: yPx + sizePx * 0.7,
});

const touch = (a: Strip, b: Strip): boolean =>
  a.leftPx < b.rightPx && b.leftPx < a.rightPx && a.topPx < b.bottomPx && b.topPx < a.bottomPx;

/** A name half off the board says nothing, unless its mark is off the board too. */
const inBoard = (strip: Strip, { size }: Scene): boolean =>
  strip.leftPx >= 0 && strip.rightPx <= size.widthPx && strip.bottomPx >= 0 && strip.topPx <= size.heightPx;

const numerals = (scene: Scene): Strip[] =>
  rankPlaces(scene).map(({ xPx, yPx, halfPx }) => ({
    leftPx: xPx - halfPx,
    rightPx: xPx + halfPx,
    topPx: yPx - rankHalfHeightPx,
    bottomPx: yPx + rankHalfHeightPx,
  }));

const marks = ({ nodes, camera, crowded }: Scene): Strip[] =>
  crowded
    ? []
    : nodes
        .filter((node) => node.kind !== 'branch')
        .map((node) => {
          const { xPx, yPx } = toScreen(camera, node.at);
          return {
            leftPx: xPx - markReachPx,
            rightPx: xPx + markReachPx,
            topPx: yPx - markReachPx,
            bottomPx: yPx + markReachPx,
          };
        });

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
    const roomPx = (box.maxXMm - box.minXMm) * camera.pxPerMm;
    if (roomPx < panel.name.length * 5) return [];
    const middle = toScreen(camera, {
      xMm: (box.minXMm + box.maxXMm) / 2,
      yMm: (box.minYMm + box.maxYMm) / 2,
    });
    const heightPx = (box.maxYMm - box.minYMm) * camera.pxPerMm;
    const places = (widthPx: number) =>
      [0, -heightPx / 4, heightPx / 4].map((offPx) => ({
        leftPx: middle.xPx - widthPx / 2,
        yPx: middle.yPx + offPx,
      }));
    return [{ text: panel.name, style: 'panel' as const, places }];
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
      const { xPx, yPx } = toScreen(camera, node.at);
      const places = (widthPx: number) => [
        { leftPx: xPx + gapPx, yPx: yPx - 11 },
        { leftPx: xPx - gapPx - widthPx, yPx: yPx - 11 },
        { leftPx: xPx + gapPx, yPx: yPx + 12 },
        { leftPx: xPx - gapPx - widthPx, yPx: yPx + 12 },
        { leftPx: xPx - widthPx / 2, yPx: yPx - 22 },
        { leftPx: xPx - widthPx / 2, yPx: yPx + 23 },
      ];
      const loud = lit === null || onCircuit.has(node.id);
      return { text: node.name, style: loud ? ('node' as const) : ('quiet' as const), places };
    });
}
