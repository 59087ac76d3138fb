import type { Panel } from '#core/map/records.ts';
import { compareText } from '#core/quantity/compare-text.ts';
import type { PanelId } from '#core/quantity/id.ts';

/** A panel's place in the diagram, in px from its top left corner. */
export interface OrderBox {
  readonly id: PanelId;
  /** 0 comes off first. */
  readonly layer: number;
  readonly xPx: number;
  readonly yPx: number;
}

export interface OrderArrow {
  readonly first: PanelId;
  readonly waits: PanelId;
  readonly from: { readonly xPx: number; readonly yPx: number };
  readonly to: { readonly xPx: number; readonly yPx: number };
}

export interface OrderPicture {
  readonly boxes: readonly OrderBox[];
  readonly arrows: readonly OrderArrow[];
  readonly boxPx: { readonly width: number; readonly height: number };
  readonly heightPx: number;
  /** Where the panels begin that are in no order yet; null when there are none. */
  readonly looseYPx: number | null;
}

const boxHeightPx = 48;
const gapPx = 14;
/** Room between two steps for the arrows to be told apart and pressed. */
const stepPx = 40;
/** Between the lines of one step that does not fit beside one another. */
const linePx = 14;
/** Room for the heading of the panels in no order. */
const loosePx = 24;
const widestPx = 190;
const leastWidthPx = 120;

type Panels = ReadonlyMap<PanelId, Panel>;

/**
 * A layered drawing of what must be off before what, among some panels: every panel one step below the
 * lowest it waits for, the order within a step by the middle of what lies above, so that few arrows cross.
 * Panels in a ring stand together on the last step, those in
 * no order at all below the rest.
 */
export function orderPicture(panels: Panels, ids: Iterable<PanelId>, widthPx: number): OrderPicture {
  const among = [...new Set(ids)].flatMap((id) => panels.get(id) ?? []).sort(byOrder);
  const shown = new Set(among.map(({ id }) => id));
  const firstsOf = (panel: Panel) => [...new Set(panel.offFirst)].filter((id) => shown.has(id));
  const tied = new Set(among.flatMap((panel) => firstsOf(panel).flatMap((id) => [id, panel.id])));
  const layers = layersOf(
    among.filter(({ id }) => tied.has(id)),
    firstsOf,
  );
  const loose = among.filter(({ id }) => !tied.has(id));
  const perLine = Math.max(1, Math.floor((widthPx + gapPx) / (leastWidthPx + gapPx)));
  const width = Math.min(widestPx, Math.floor((widthPx + gapPx) / perLine) - gapPx);
  const boxes: OrderBox[] = [];
  const middleOf = new Map<PanelId, number>();
  let yPx = 0;
  let looseYPx: number | null = null;
  [...layers, ...(loose.length > 0 ? [loose] : [])].forEach((layer, step) => {
    if (layer === loose && layers.length > 0) {
      yPx += loosePx;
      looseYPx = yPx;
    }
    const sorted = sortedByMiddle(layer, firstsOf, middleOf);
    for (let start = 0; start < sorted.length; start += perLine) {
      const line = sorted.slice(start, start + perLine);
      const lineWidth = line.length * (width + gapPx) - gapPx;
      line.forEach(({ id }, i) => {
        const xPx = (widthPx - lineWidth) / 2 + i * (width + gapPx);
        boxes.push({ id, layer: step, xPx, yPx });
        middleOf.set(id, xPx + width / 2);
      });
      yPx += boxHeightPx + linePx;
    }
    yPx += stepPx - linePx;
  });
  const boxPx = { width, height: boxHeightPx };
  const heightPx = Math.max(0, yPx - stepPx);
  return { boxes, arrows: arrowsOf(among, firstsOf, boxes, boxPx), boxPx, heightPx, looseYPx };
}

const byOrder = (a: Panel, b: Panel): number => a.order - b.order || compareText(a.id, b.id);

function layersOf(among: readonly Panel[], firstsOf: (panel: Panel) => readonly PanelId[]): Panel[][] {
  const layerOf = new Map<PanelId, number>();
  const layers: Panel[][] = [];
  let left = among;
  while (left.length > 0) {
    const free = left.filter((panel) => firstsOf(panel).every((id) => layerOf.has(id)));
    // Only a ring leaves nothing free.
    const layer = free.length > 0 ? free : [...left];
    for (const { id } of layer) layerOf.set(id, layers.length);
    layers.push(layer);
    const placed = new Set(layer);
    left = left.filter((panel) => !placed.has(panel));
  }
  return layers;
}

function sortedByMiddle(
  layer: readonly Panel[],
  firstsOf: (panel: Panel) => readonly PanelId[],
  middleOf: ReadonlyMap<PanelId, number>,
): readonly Panel[] {
  const middle = (panel: Panel): number => {
    const above = firstsOf(panel).flatMap((id) => middleOf.get(id) ?? []);
    return above.length === 0 ? 0 : above.reduce((sum, x) => sum + x, 0) / above.length;
  };
  return [...layer].sort((a, b) => middle(a) - middle(b) || byOrder(a, b));
}

/** Arrows leave and reach a box side by side, so that each can be told from the next. */
function arrowsOf(
  among: readonly Panel[],
  firstsOf: (panel: Panel) => readonly PanelId[],
  boxes: readonly OrderBox[],
  { width, height }: OrderPicture['boxPx'],
): readonly OrderArrow[] {
  const boxOf = new Map(boxes.map((box) => [box.id, box]));
  const pairs = among
    .flatMap((panel) => firstsOf(panel).map((first) => [boxOf.get(first), boxOf.get(panel.id)] as const))
    .flatMap(([first, waits]) => (first && waits ? [{ first, waits }] : []));
  const xAt = (box: OrderBox, own: OrderBox, others: readonly OrderBox[]): number => {
    const sorted = [...others].sort((a, b) => a.xPx - b.xPx || compareText(a.id, b.id));
    return box.xPx + (width * (sorted.indexOf(own) + 1)) / (sorted.length + 1);
  };
  return pairs.map(({ first, waits }) => {
    const leaving = pairs.filter((pair) => pair.first === first).map((pair) => pair.waits);
    const reaching = pairs.filter((pair) => pair.waits === waits).map((pair) => pair.first);
    return {
      first: first.id,
      waits: waits.id,
      from: { xPx: xAt(first, waits, leaving), yPx: first.yPx + height },
      to: { xPx: xAt(waits, first, reaching), yPx: waits.yPx },
    };
  });
}

/** A panel with all that must be off before it and all that waits for it directly. */
export function orderAround(panels: Panels, id: PanelId): readonly PanelId[] {
  const around = new Set<PanelId>();
  const waiting: PanelId[] = [id];
  for (let at = waiting.pop(); at !== undefined; at = waiting.pop()) {
    const panel = panels.get(at);
    if (!panel || around.has(at)) continue;
    around.add(at);
    waiting.push(...panel.offFirst);
  }
  for (const panel of panels.values()) if (panel.offFirst.includes(id)) around.add(panel.id);
  return [...around];
}
