import { useCallback, useMemo, useRef, useState } from 'react';
import type { PlanPoint } from '#core/geometry/place.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { type BoardIndex, boardIndex } from '../../board/board-index.ts';
import type { BoardPointer } from '../../board/board-pointer.ts';
import { emptyOverlay, type Overlay } from '../../board/overlay.ts';
import type { ToolChoices, ToolEvent, ToolView, TraceChoice } from '../../tools/tool.ts';
import { type InHand, isUnderWay, overlayInHand, stepInHand, takeUp } from '../../tools/tool-box.ts';
import type { ToolName } from '../../tools/tool-name.ts';
import type { Draw } from './draw-context.ts';
import { mapWithout, mayPick, outOfReach } from './layers.ts';

const firstChoices: ToolChoices = {
  outlineKind: 'shell',
  nodeKind: 'inline-connector',
  clipKind: 'clip',
  rubSpotShape: 'point',
  rubSpotKind: 'raw-edge',
  snapping: true,
  grid: false,
  mirror: false,
  smooth: false,
  paintPanelId: null,
};

/** The drawing action in hand: feeds it events and does what it asks. */
export function useDrawing(draw: Draw, pxPerMm: number) {
  const [inHand, setInHand] = useState<InHand>(() => takeUp('select'));
  const [choices, setChoices] = useState(firstChoices);
  const [hover, setHover] = useState<string | null>(null);
  const [traceChoice, setTraceChoice] = useState<TraceChoice | null>(null);
  /** Where the pointer is over the board; null while it is elsewhere. */
  const pointerAt = useRef<PlanPoint | null>(null);
  /** Events may follow one another faster than React draws. */
  const latest = useRef(inHand);

  /** What the last press was with: a second press in time counts as double only within one action. */
  const pressedWith = useRef<ToolName | null>(null);
  const indexOf = useIndexWithin(draw);

  const viewNow = (): ToolView => {
    const state = draw.session.store.getState();
    const open = state.phase === 'open' ? state : draw.open;
    return {
      map: open.document,
      get index() {
        return indexOf(open.document);
      },
      selection: open.selection,
      traceChoice,
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
      else if (effect.type === 'trace') setTraceChoice(effect.choice);
      else
        draw.make(effect.patch, { label: effect.label, ...(effect.select ? { select: effect.select } : {}) });
    }
  };

  const take = useCallback(
    (name: ToolName): void => {
      draw.session.preview(null);
      latest.current = takeUp(name);
      pressedWith.current = null;
      setInHand(latest.current);
    },
    [draw.session],
  );

  const onPointer = (pointer: BoardPointer): void => {
    pointerAt.current = pointer.type === 'leave' ? null : pointer.at;
    if (pointer.type === 'leave') {
      setHover(null);
      return;
    }
    if (pointer.type === 'cancel') {
      feed({ type: 'key', key: 'Escape' });
      return;
    }
    const hits = pointer.hits.filter((hit) => mayPick(draw.layers, hit.id));
    if (pointer.type === 'move') setHover(latest.current.name === 'select' ? (hits[0]?.id ?? null) : null);
    const { at, reachMm, shift, alt } = pointer;
    const type =
      pointer.type === 'double' && pressedWith.current !== latest.current.name ? 'down' : pointer.type;
    if (type === 'down') pressedWith.current = latest.current.name;
    feed({ type, at, hits, reachMm, shift, alt });
  };

  const overlay: Overlay = useMemo(() => {
    if (inHand.name === 'select' && inHand.state.at === 'rest' && !inHand.state.corner) return emptyOverlay;
    return overlayInHand(inHand, {
      map: draw.map,
      get index() {
        return indexOf(draw.map);
      },
      selection: draw.open.selection,
      traceChoice,
      pxPerMm,
      choices,
      lengths: draw.lengths,
      chance: Math.random,
    });
  }, [inHand, draw.map, draw.open.selection, draw.lengths, indexOf, traceChoice, pxPerMm, choices]);

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
    pointerAt,
    overlay,
    hover,
    choices,
    choose: (part: Partial<ToolChoices>) => setChoices((before) => ({ ...before, ...part })),
  };
}

/** The index of what may be picked, renewed only where the map or what is hidden and locked differs. */
function useIndexWithin({ layers }: Draw): (map: MapDocument) => BoardIndex {
  return useMemo(() => {
    const away = outOfReach(layers);
    let last: { readonly map: MapDocument; readonly index: BoardIndex } | null = null;
    return (map) => {
      if (last?.map === map) return last.index;
      const index = boardIndex(mapWithout(map, away), last?.index ?? null);
      last = { map, index };
      return index;
    };
  }, [layers]);
}
export type Drawing = ReturnType<typeof useDrawing>;
