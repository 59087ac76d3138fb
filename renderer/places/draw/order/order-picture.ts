import { offClosure } from '#core/map/panel-order.ts';
import type { Panel } from '#core/map/records.ts';
import type { PanelId } from '#core/quantity/id.ts';
import { orderAmong, orderLayers } from './order-layers.ts';
import { gapPx, type OrderSlot, orderRows } from './order-rows.ts';

/** A panel's place in the diagram, in px from its top left corner. */
export interface OrderBox {
  readonly id: PanelId;
  readonly xPx: number;
  readonly yPx: number;
}

export interface PicturePoint {
  readonly xPx: number;
  readonly yPx: number;
}

/** An arrow from the panel that comes off first to the one that waits. */
export interface OrderArrow {
  readonly first: PanelId;
  readonly waits: PanelId;
  /** From below the one to the top of the other, two points for each row it passes between. */
  readonly way: readonly PicturePoint[];
}

export interface OrderPicture {
  readonly boxes: readonly OrderBox[];
  readonly arrows: readonly OrderArrow[];
  readonly boxPx: { readonly width: number; readonly height: number };
  readonly heightPx: number;
  /** Where the panels begin that are in no order yet; null when there are none below an order. */
  readonly looseYPx: number | null;
}

const boxHeightPx = 48;
/** Room between rows for arrows and the marks that take them out. */
const stepPx = 46;
/** Room for the heading of the panels in no order. */
const loosePx = 34;

/** A layered drawing of what must be off before what, among some panels; those in no order below the rest. */
export function orderPicture(
  panels: ReadonlyMap<PanelId, Panel>,
  ids: Iterable<PanelId>,
  widthPx: number,
): OrderPicture {
  const among = orderAmong(panels, ids);
  const tied = new Set(
    among.panels.flatMap((panel) => among.firstsOf(panel).flatMap((id) => [id, panel.id])),
  );
  const ordered = { ...among, panels: among.panels.filter(({ id }) => tied.has(id)) };
  const loose = { ...among, panels: among.panels.filter(({ id }) => !tied.has(id)) };
  const upper = orderRows(ordered, orderLayers(ordered), widthPx);
  const lower = orderRows(loose, loose.panels.length > 0 ? [loose.panels] : [], widthPx);
  const width = upper.rows.length > 0 && lower.rows.length > 0 ? Math.min(upper.boxPx, lower.boxPx) : 0;
  const boxPx = { width: width || (upper.rows.length > 0 ? upper.boxPx : lower.boxPx), height: boxHeightPx };
  const yOf = new Map<OrderSlot, number>();
  upper.rows.forEach((row, i) => {
    for (const slot of row) yOf.set(slot, i * (boxHeightPx + stepPx));
  });
  const upperPx = Math.max(0, upper.rows.length * (boxHeightPx + stepPx) - stepPx);
  const looseYPx = upperPx > 0 && lower.rows.length > 0 ? upperPx + loosePx : null;
  lower.rows.forEach((row, i) => {
    for (const slot of row) yOf.set(slot, (looseYPx ?? upperPx) + i * (boxHeightPx + gapPx));
  });
  const lowerPx = Math.max(0, lower.rows.length * (boxHeightPx + gapPx) - gapPx);
  const boxes = [...yOf].flatMap(([{ panelId, xPx }, yPx]) =>
    panelId === null ? [] : [{ id: panelId, xPx: xPx - boxPx.width / 2, yPx }],
  );
  const arrows = upper.trails.map(({ first, waits, slots }): OrderArrow => {
    const way = slots.flatMap((slot, i): PicturePoint[] => {
      const yPx = yOf.get(slot) as number;
      const next = slots[i + 1];
      const before = slots[i - 1];
      const leave = next
        ? [{ xPx: portPx(slot, slot.below, next, boxPx.width), yPx: yPx + boxHeightPx }]
        : [];
      const reach = before ? [{ xPx: portPx(slot, slot.above, before, boxPx.width), yPx }] : [];
      return [...reach, ...leave];
    });
    return { first, waits, way };
  });
  return { boxes, arrows, boxPx, heightPx: (looseYPx ?? upperPx) + lowerPx, looseYPx };
}

/** Where on a panel's edge an arrow leaves or reaches it: side by side, in the order of their other ends. */
function portPx(own: OrderSlot, tied: readonly OrderSlot[], other: OrderSlot, widthPx: number): number {
  if (own.panelId === null) return own.xPx;
  const sorted = [...tied].sort((a, b) => a.xPx - b.xPx);
  return own.xPx - widthPx / 2 + (widthPx * (sorted.indexOf(other) + 1)) / (sorted.length + 1);
}

/** A panel with all that must be off before it and all that waits for it directly. */
export function orderAround(panels: ReadonlyMap<PanelId, Panel>, id: PanelId): readonly PanelId[] {
  const around = new Set<PanelId>(offClosure(panels, [id]));
  for (const panel of panels.values()) if (panel.offFirst.includes(id)) around.add(panel.id);
  return [...around];
}
