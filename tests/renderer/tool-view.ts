import type { PlanPoint } from '#core/geometry/place.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { applyPatch } from '#core/map/patch.ts';
import { seededChance } from '#core/quantity/chance.ts';
import { boardIndex } from '#renderer/board/board-index.ts';
import { hitsAt } from '#renderer/board/hit.ts';
import type { PointerInput, Tool, ToolEffect, ToolEvent, ToolView } from '#renderer/tools/tool.ts';

const reachMm = 9;

/** A drawing action worked by hand on a map that takes over every edit, as the place does. */
export function toolInHand<S>(tool: Tool<S>, start: MapDocument, choices: Partial<ToolView['choices']> = {}) {
  const chance = seededChance(7);
  let map = start;
  let state = tool.start;
  let selection: readonly string[] = [];
  let traceChoice: ToolView['traceChoice'] = null;
  let effects: readonly ToolEffect[] = [];
  let lastEdit: Extract<ToolEffect, { type: 'edit' }> | null = null;

  const view = (): ToolView => ({
    map,
    index: boardIndex(map),
    selection,
    traceChoice,
    pxPerMm: 1,
    choices: {
      outlineKind: 'shell',
      nodeKind: 'inline-connector',
      clipKind: 'clip',
      rubSpotShape: 'point',
      rubSpotKind: 'burr',
      snapping: true,
      grid: false,
      mirror: false,
      smooth: false,
      paintPanelId: null,
      ...choices,
    },
    lengths: 'metric',
    chance,
  });

  const feed = (event: ToolEvent): void => {
    const step = tool.step(state, event, view());
    state = step.state;
    effects = step.effects;
    for (const effect of step.effects) {
      if (effect.type === 'select') selection = effect.ids;
      if (effect.type === 'trace') traceChoice = effect.choice;
      if (effect.type !== 'edit') continue;
      lastEdit = effect;
      if (!effect.patch.ok) continue;
      const next = applyPatch(map, effect.patch.value);
      if (!next.ok) throw new Error(`the edit does not fit: ${next.problem.code}`);
      map = next.value;
      if (effect.select) selection = effect.select;
    }
  };

  const pointer = (
    type: PointerInput['type'],
    at: PlanPoint,
    keys: { readonly shift?: boolean; readonly alt?: boolean } = {},
  ): void =>
    feed({
      type,
      at,
      hits: hitsAt(boardIndex(map), at, reachMm),
      reachMm,
      shift: keys.shift ?? false,
      alt: keys.alt ?? false,
    });

  return {
    get map() {
      return map;
    },
    get state() {
      return state;
    },
    get selection() {
      return selection;
    },
    get effects() {
      return effects;
    },
    /** What the newest edit was refused for; null when it was made or there is none. */
    get refused() {
      return lastEdit && !lastEdit.patch.ok ? lastEdit.patch.problem : null;
    },
    get overlay() {
      return tool.overlay(state, view());
    },
    get traceChoice() {
      return traceChoice;
    },
    pick(ids: readonly string[]) {
      selection = ids;
    },
    move: (xMm: number, yMm: number) => pointer('move', { xMm, yMm }),
    press(xMm: number, yMm: number, keys: { readonly shift?: boolean; readonly alt?: boolean } = {}) {
      pointer('move', { xMm, yMm }, keys);
      pointer('down', { xMm, yMm }, keys);
      pointer('up', { xMm, yMm }, keys);
    },
    double: (xMm: number, yMm: number) => pointer('double', { xMm, yMm }),
    drag(
      from: readonly [number, number],
      to: readonly [number, number],
      letGo = true,
      keys: { readonly shift?: boolean; readonly alt?: boolean } = {},
    ) {
      const [fromX, fromY] = from;
      const [toX, toY] = to;
      pointer('down', { xMm: fromX, yMm: fromY }, keys);
      pointer('move', { xMm: (fromX + toX) / 2, yMm: (fromY + toY) / 2 }, keys);
      pointer('move', { xMm: toX, yMm: toY }, keys);
      if (letGo) pointer('up', { xMm: toX, yMm: toY }, keys);
    },
    key: (key: 'Enter' | 'Escape' | 'Backspace' | 'Delete') => feed({ type: 'key', key }),
  };
}
