import { useEffect, useRef } from 'react';
import { type Alignment, alignThings } from '#core/map/commands/align-things.ts';
import { moveThings } from '#core/map/commands/move-things.ts';
import { toolKeys, toolNames } from '../../tools/tool-name.ts';
import type { Draw } from './draw-context.ts';
import { isTyping } from './is-typing.ts';
import { mapWithout, outOfReach } from './layers.ts';
import type { Drawing } from './use-drawing.ts';

const nudgeMm = 10;
const fineNudgeMm = 1;
const nudges: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};
const switches: Readonly<Record<string, 'grid' | 'snapping' | 'mirror'>> = {
  G: 'grid',
  S: 'snapping',
  M: 'mirror',
};

/** Screen directions as edges of the car: its front lies to the left, its right side up. */
const alignKeys: Readonly<Record<string, Alignment>> = {
  ArrowLeft: 'front',
  ArrowRight: 'rear',
  ArrowUp: 'right',
  ArrowDown: 'left',
};

export interface DrawKeys {
  readonly onSheet: () => void;
  readonly onFind: () => void;
}

/** Keys of the drawing place. Those that end or drop a gesture count on the board only, not on a button. */
export function useDrawKeys(draw: Draw, drawing: Drawing, { onSheet, onFind }: DrawKeys): void {
  const latest = useRef({ draw, drawing, onSheet, onFind });
  latest.current = { draw, drawing, onSheet, onFind };
  useEffect(() => {
    const listen = (event: KeyboardEvent): void => {
      if (event.defaultPrevented) return;
      if ((event.ctrlKey || event.metaKey) && !event.shiftKey && event.key.toLowerCase() === 'f') {
        event.preventDefault();
        latest.current.onFind();
        return;
      }
      if (isTyping(event.target)) return;
      if (onKey(event, latest.current)) event.preventDefault();
    };
    window.addEventListener('keydown', listen);
    return () => window.removeEventListener('keydown', listen);
  }, []);
}

function onKey(
  event: KeyboardEvent,
  {
    draw,
    drawing,
    onSheet,
  }: { readonly draw: Draw; readonly drawing: Drawing; readonly onSheet: () => void },
): boolean {
  if (event.ctrlKey || event.metaKey) {
    const key = event.key.toLowerCase();
    if (key === 'z' && !event.shiftKey) draw.session.undo();
    else if ((key === 'z' && event.shiftKey) || key === 'y') draw.session.redo();
    else if (key === 'd' && !event.shiftKey) draw.copying.duplicate();
    else if (key === 'a' && !event.shiftKey) draw.session.select(allPickable(draw));
    else return event.shiftKey && alignByKey(event.key, draw);
    return true;
  }
  const nudge = event.altKey ? nudges[event.key] : undefined;
  if (nudge) {
    const ids = draw.open.selection.filter((id) => !id.startsWith('clip:'));
    if (ids.length === 0) return false;
    const [x, y] = nudge;
    const mm = event.shiftKey ? fineNudgeMm : nudgeMm;
    const patch = moveThings(draw.map, { ids, dxMm: x * mm, dyMm: y * mm });
    draw.make(patch, { label: 'edit.moveThings', joinKey: 'nudge' });
    return true;
  }
  if (event.altKey) return false;
  if (event.key === '?') {
    onSheet();
    return true;
  }
  const letter = event.key.toUpperCase();
  const tool = toolNames.find((name) => toolKeys[name] === letter);
  if (tool) {
    drawing.take(tool);
    return true;
  }
  const switched = switches[letter];
  if (switched) {
    drawing.choose({ [switched]: !drawing.choices[switched] });
    return true;
  }
  if (event.key === 'Escape') {
    drawing.dropOrLayDown();
    return true;
  }
  const onButton = event.target instanceof HTMLElement && event.target.matches('button, [role=tab], input');
  if (event.key === 'Delete' || (event.key === 'Backspace' && !onButton)) {
    drawing.feed({ type: 'key', key: event.key });
    return true;
  }
  if (event.key === 'Enter' && !onButton) {
    drawing.feed({ type: 'key', key: 'Enter' });
    return true;
  }
  return false;
}

/** Lines up what is picked by an arrow; says whether it was one. */
function alignByKey(key: string, draw: Draw): boolean {
  const how = alignKeys[key];
  if (!how) return false;
  const { selection: ids } = draw.open;
  if (ids.length > 1) draw.make(alignThings(draw.map, { ids, how }), { label: 'edit.alignThings' });
  return true;
}

/** Everything with a place on the board that is neither hidden nor locked; pictures lie under it and stay. */
function allPickable({ map, layers }: Draw): readonly string[] {
  const { outlines, panels, segments, nodes, rubSpots } = mapWithout(map, outOfReach(layers));
  return [outlines, panels, segments, nodes, rubSpots].flatMap((table): string[] => [...table.keys()]);
}
