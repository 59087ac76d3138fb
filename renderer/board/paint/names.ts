import { boundsOf } from '#core/geometry/bounds.ts';
import { toScreen } from '../camera.ts';
import type { Painter, Scene } from '../scene.ts';
import { rankHalfHeightPx, rankPlaces } from './rank-places.ts';
import { type Strip, takenPlaces } from './taken-places.ts';

/** A name with the left ends it may have, best first; the first free one is taken. */
interface Name {
  readonly text: string;
  readonly style: 'panel' | 'node' | 'quiet';
  readonly places: (widthPx: number) => readonly { readonly leftPx: number; readonly yPx: number }[];
}

const sizePx = 13;
/** From the middle of a mark to its name. */
const gapPx = 13;
const markReachPx = 8;

/** Short names of panels and nodes. A name never lies on a mark, a numeral or another name; without a free place it is left out. */
export const paintNames: Painter = (c, scene) => {
  nameLayout(scene).paintSome(c, Number.POSITIVE_INFINITY);
};

/**
 * The names of a scene, to be laid out and painted a few at a time: each finds its place among those before
 * it. All are tried on the board first, so that what lies out on the margin never moves a name in sight.
 */
export function nameLayout(scene: Scene): {
  readonly paintSome: (c: CanvasRenderingContext2D, most: number) => void;
} {
  let names: Name[] | null = null;
  const left: Name[] = [];
  let done = 0;
  const taken = takenPlaces();
  return {
    paintSome: (c, most) => {
      if (!names) {
        names = [...nodeNames(scene), ...panelNames(scene)];
        if (names.length > 0) for (const strip of [...numerals(scene), ...marks(scene)]) taken.take(strip);
      }
      c.textBaseline = 'middle';
      c.textAlign = 'left';
      const until = done + most;
      for (; done < Math.min(until, names.length); done++) {
        const name = names[done] as Name;
        if (!paintName(c, scene, name, onBoard, taken) && scene.marginPx > 0) left.push(name);
      }
      for (; done < Math.min(until, names.length + left.length); done++) {
        paintName(c, scene, left[done - names.length] as Name, onMargin, taken);
      }
    },
  };
}

/** Paints a name at the first free one of its places of which `where` holds; whether there was one. */
function paintName(
  c: CanvasRenderingContext2D,
  scene: Scene,
  name: Name,
  where: (strip: Strip, scene: Scene) => boolean,
  taken: ReturnType<typeof takenPlaces>,
): boolean {
  const font = `${name.style === 'panel' ? 'italic ' : ''}${sizePx}px ${scene.fontFamily}`;
  const widthPx = textWidthPx(c, font, name.text);
  const place = name.places(widthPx).find(({ leftPx, yPx }) => {
    const strip = stripOf(leftPx, yPx, widthPx);
    return where(strip, scene) && taken.isFree(strip);
  });
  if (!place) return false;
  taken.take(stripOf(place.leftPx, place.yPx, widthPx));
  // A strip of paper under the words: a run behind them would read as a stroke through.
  c.fillStyle = scene.colours.paper;
  c.globalAlpha = 0.82;
  c.fillRect(place.leftPx - 2, place.yPx - sizePx * 0.62, widthPx + 4, sizePx * 1.2);
  c.globalAlpha = 1;
  c.fillStyle = name.style === 'node' ? scene.colours.ink : scene.colours.graphite;
  c.font = font;
  c.fillText(name.text, place.leftPx, place.yPx);
  return true;
}

const widths = new Map<string, number>();
const mostWidths = 20_000;

/** Measuring text is slow, and the same names come at every picture. */
function textWidthPx(c: CanvasRenderingContext2D, font: string, text: string): number {
  const key = `${font}/${text}`;
  const known = widths.get(key);
  if (known !== undefined) return known;
  c.font = font;
  const { width } = c.measureText(text);
  if (widths.size >= mostWidths) widths.clear();
  widths.set(key, width);
  return width;
}

const stripOf = (leftPx: number, yPx: number, widthPx: number): Strip => ({
  leftPx: leftPx - 3,
  rightPx: leftPx + widthPx + 3,
  topPx: yPx - sizePx * 0.7,
  bottomPx: yPx + sizePx * 0.7,
});

/** A name half off the board says nothing. */
const onBoard = (strip: Strip, { size, marginPx }: Scene): boolean =>
  strip.leftPx >= marginPx &&
  strip.rightPx <= size.widthPx - marginPx &&
  strip.bottomPx >= marginPx &&
  strip.topPx <= size.heightPx - marginPx;

/** Wholly out on the margin, which comes into view when the board is panned. */
const onMargin = (strip: Strip, { size, marginPx }: Scene): boolean =>
  strip.rightPx <= marginPx ||
  strip.leftPx >= size.widthPx - marginPx ||
  strip.bottomPx <= marginPx ||
  strip.topPx >= size.heightPx - marginPx;

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
