import type { Panel } from '#core/map/records.ts';
import type { PanelId } from '#core/quantity/id.ts';
import type { OrderAmong } from './order-layers.ts';

/** A place in a row: a panel, or the lane of an arrow that passes between panels. */
export interface OrderSlot {
  readonly panelId: PanelId | null;
  readonly above: OrderSlot[];
  readonly below: OrderSlot[];
  xPx: number;
}

/** An arrow as the places it goes through, from the panel that comes off first to the one that waits. */
export interface OrderTrail {
  readonly first: PanelId;
  readonly waits: PanelId;
  readonly slots: readonly OrderSlot[];
}

export interface OrderRows {
  readonly rows: readonly OrderSlot[][];
  readonly trails: readonly OrderTrail[];
  readonly boxPx: number;
}

export const gapPx = 14;
const lanePx = 6;
const widestPx = 190;
const leastBoxPx = 118;
const sweeps = 6;

/** Lays layers out in rows that fit a width, arrows over several rows in lanes of their own. */
export function orderRows(
  among: OrderAmong,
  layers: readonly (readonly Panel[])[],
  widthPx: number,
): OrderRows {
  let perLine = Math.max(1, Math.floor((widthPx + gapPx) / (leastBoxPx + gapPx)));
  for (;;) {
    const laid = rowsOf(among, layers, perLine);
    const boxPx = Math.min(widestPx, ...laid.rows.map((row) => boxWidth(row, widthPx)));
    if (boxPx >= leastBoxPx || perLine === 1) {
      const width = Math.max(40, boxPx);
      for (let sweep = 0; sweep < sweeps; sweep++) settle(laid.rows, sweep % 2 === 0, width, widthPx);
      return { ...laid, boxPx: width };
    }
    perLine--;
  }
}

/** How wide a panel of a row can be. */
function boxWidth(row: readonly OrderSlot[], widthPx: number): number {
  const boxes = row.filter(({ panelId }) => panelId !== null).length;
  const taken = (row.length - 1) * gapPx + (row.length - boxes) * lanePx;
  return boxes === 0 ? widestPx : Math.floor((widthPx - taken) / boxes);
}

function rowsOf(
  { panels, firstsOf }: OrderAmong,
  layers: readonly (readonly Panel[])[],
  perLine: number,
): Pick<OrderRows, 'rows' | 'trails'> {
  const rows: OrderSlot[][] = [];
  const rowOf = new Map<PanelId, number>();
  const slotOf = new Map<PanelId, OrderSlot>();
  const slot = (panelId: PanelId | null): OrderSlot => ({ panelId, above: [], below: [], xPx: 0 });
  for (const layer of layers) {
    const lines = Math.ceil(layer.length / perLine);
    const inLine = Math.ceil(layer.length / lines);
    for (let line = 0; line < lines; line++) {
      const row = layer.slice(line * inLine, (line + 1) * inLine).map(({ id }) => {
        const own = slot(id);
        rowOf.set(id, rows.length);
        slotOf.set(id, own);
        return own;
      });
      rows.push(row);
    }
  }
  const trails = panels.flatMap((panel) =>
    firstsOf(panel).map((first): OrderTrail => {
      const [start, end] = [slotOf.get(first) as OrderSlot, slotOf.get(panel.id) as OrderSlot];
      const slots = [start];
      for (let row = (rowOf.get(first) as number) + 1; row < (rowOf.get(panel.id) as number); row++) {
        const lane = slot(null);
        (rows[row] as OrderSlot[]).push(lane);
        slots.push(lane);
      }
      slots.push(end);
      for (let i = 1; i < slots.length; i++) {
        (slots[i - 1] as OrderSlot).below.push(slots[i] as OrderSlot);
        (slots[i] as OrderSlot).above.push(slots[i - 1] as OrderSlot);
      }
      return { first, waits: panel.id, slots };
    }),
  );
  return { rows, trails };
}

/** One pass over the rows, each sorted by the middle of what it is tied to in the row before, then set out. */
function settle(rows: readonly OrderSlot[][], downwards: boolean, boxPx: number, widthPx: number): void {
  const sequence = downwards ? rows : [...rows].reverse();
  for (const row of sequence) {
    const middles = new Map(
      row.map((slot, i) => {
        const tied = downwards ? slot.above : slot.below;
        const middle = tied.reduce((sum, each) => sum + each.xPx, 0) / tied.length;
        return [slot, { middle: tied.length > 0 ? middle : slot.xPx, i }] as const;
      }),
    );
    row.sort((a, b) => {
      const [one, other] = [middles.get(a), middles.get(b)];
      return one && other ? one.middle - other.middle || one.i - other.i : 0;
    });
    setOut(row, boxPx, widthPx);
  }
}

/** Places a row side by side, in the middle of the width; where it is too wide its lanes move together. */
function setOut(row: readonly OrderSlot[], boxPx: number, widthPx: number): void {
  const widthOf = ({ panelId }: OrderSlot): number => (panelId === null ? lanePx : boxPx);
  const bare = row.reduce((sum, slot) => sum + widthOf(slot), 0);
  const gap = row.length > 1 ? Math.min(gapPx, (widthPx - bare) / (row.length - 1)) : 0;
  let xPx = (widthPx - bare - gap * (row.length - 1)) / 2;
  for (const slot of row) {
    slot.xPx = xPx + widthOf(slot) / 2;
    xPx += widthOf(slot) + gap;
  }
}
