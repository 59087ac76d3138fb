import type { Panel } from '#core/map/records.ts';
import { compareText } from '#core/quantity/compare-text.ts';
import type { PanelId } from '#core/quantity/id.ts';

/** Panels of the diagram and what each waits for among them. */
export interface OrderAmong {
  readonly panels: readonly Panel[];
  readonly firstsOf: (panel: Panel) => readonly PanelId[];
}

export const byOrder = (a: Panel, b: Panel): number => a.order - b.order || compareText(a.id, b.id);

/** The named panels, in their own order, with what each waits for among them. */
export function orderAmong(panels: ReadonlyMap<PanelId, Panel>, ids: Iterable<PanelId>): OrderAmong {
  const among = [...new Set(ids)].flatMap((id) => panels.get(id) ?? []).sort(byOrder);
  const shown = new Set(among.map(({ id }) => id));
  return {
    panels: among,
    firstsOf: ({ offFirst }) => [...new Set(offFirst)].filter((id) => shown.has(id)),
  };
}

/**
 * Steps of a layered drawing: every panel below all it waits for, and as low as what waits for it allows, so
 * that arrows are short. Panels of a ring stand together on the last step.
 */
export function orderLayers({ panels, firstsOf }: OrderAmong): readonly (readonly Panel[])[] {
  const layerOf = new Map<PanelId, number>();
  const sorted: Panel[] = [];
  let left = panels;
  for (let layer = 0; left.length > 0; layer++) {
    const free = left.filter((panel) => firstsOf(panel).every((id) => layerOf.has(id)));
    // Only a ring leaves nothing free.
    const placed = free.length > 0 ? free : left;
    for (const { id } of placed) layerOf.set(id, layer);
    sorted.push(...placed);
    const gone = new Set(placed);
    left = left.filter((panel) => !gone.has(panel));
  }
  for (const panel of sorted.reverse()) {
    const waiting = panels.filter((each) => firstsOf(each).includes(panel.id));
    const lowest = Math.min(...waiting.map(({ id }) => (layerOf.get(id) as number) - 1));
    const now = layerOf.get(panel.id) as number;
    if (Number.isFinite(lowest) && lowest > now) layerOf.set(panel.id, lowest);
  }
  const layers: Panel[][] = [];
  for (const panel of panels) {
    const layer = layerOf.get(panel.id) as number;
    layers[layer] ??= [];
    layers[layer].push(panel);
  }
  return layers.filter((layer) => layer !== undefined);
}
