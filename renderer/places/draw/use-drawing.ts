import { useCallback, useMemo, useRef, useState } from 'react';
import { boardIndex } from '../../board/board-index.ts';
import type { BoardPointer } from '../../board/board-pointer.ts';
import { emptyOverlay, type Overlay } from '../../board/overlay.ts';
import type { ToolChoices, ToolEvent, ToolView } from '../../tools/tool.ts';
import { type InHand, isUnderWay, overlayInHand, stepInHand, takeUp } from '../../tools/tool-box.ts';
import type { ToolName } from '../../tools/tool-name.ts';
import type { Draw } from './draw-context.ts';

const firstChoices: ToolChoices = {
  outlineKind: 'shell',
  nodeKind: 'inline-connector',
  clipKind: 'clip',
  rubSpotShape: 'point',
  rubSpotKind: 'raw-edge',
};

/** The drawing action in hand: feeds it events and does what it asks. */
export function useDrawing(draw: Draw, pxPerMm: number) {
  const [inHand, setInHand] = useState<InHand>(() => takeUp('select'));
  const [choices, setChoices] = useState(firstChoices);
  const [hover, setHover] = useState<string | null>(null);
  /** Events may follow one another faster than React draws. */
  const latest = useRef(inHand);

  const viewNow = (): ToolView => {
    const state = draw.session.store.getState();
    const open = state.phase === 'open' ? state : draw.open;
    return {
      map: open.document,
      get index() {
        return boardIndex(open.document);
      },
      selection: open.selection,
      pxPerMm,
      choices,
      lengths: draw.lengths,
      chance: Math.random,
    };
  };

  const feed = (event: ToolEvent): void => {
    const view = viewNow();
    const step = stepInHand(latest.current, event, view);
    latest.current = step.inHand;
    setInHand(step.inHand);
    for (const effect of step.effects) {
      if (effect.type === 'preview') draw.session.preview(effect.patch);
      else if (effect.type === 'select') draw.session.select(effect.ids);
      else if (effect.type === 'remove') draw.remove(effect.ids);
      else
        draw.make(effect.patch, { label: effect.label, ...(effect.select ? { select: effect.select } : {}) });
    }
  };

  const take = useCallback(
    (name: ToolName): void => {
      draw.session.preview(null);
      latest.current = takeUp(name);
      setInHand(latest.current);
    },
    [draw.session],
  );

  const onPointer = (pointer: BoardPointer): void => {
    if (pointer.type === 'leave') {
      setHover(null);
      return;
    }
    if (pointer.type === 'cancel') {
      feed({ type: 'key', key: 'Escape' });
      return;
    }
    if (pointer.type === 'move')
      setHover(latest.current.name === 'select' ? (pointer.hits[0]?.id ?? null) : null);
    const { type, at, hits, reachMm, shift, alt } = pointer;
    feed({ type, at, hits, reachMm, shift, alt });
  };

  const overlay: Overlay = useMemo(() => {
    if (inHand.name === 'select' && inHand.state.at === 'rest') return emptyOverlay;
    return overlayInHand(inHand, {
      map: draw.map,
      index: boardIndex(draw.map),
      selection: [],
      pxPerMm,
      choices,
      lengths: draw.lengths,
      chance: Math.random,
    });
  }, [inHand, draw.map, draw.lengths, pxPerMm, choices]);

  /** Escape drops what is begun; with nothing begun it lays the action down. */
  const dropOrLayDown = (): void => {
    if (latest.current.name !== 'select' && !isUnderWay(latest.current)) take('select');
    else feed({ type: 'key', key: 'Escape' });
  };

  return {
    inHand,
    take,
    feed,
    dropOrLayDown,
    onPointer,
    overlay,
    hover,
    choices,
    choose: (part: Partial<ToolChoices>) => setChoices((before) => ({ ...before, ...part })),
  };
}
export type Drawing = ReturnType<typeof useDrawing>;
