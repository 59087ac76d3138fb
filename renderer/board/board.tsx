import {
  type KeyboardEvent,
  type ReactNode,
  useEffect,
  useLayoutEffect,
  useMemo,
  useRef,
  useState,
} from 'react';
import type { MapDocument } from '#core/map/map-document.ts';
import { useMachineSettings } from '../session/machine-settings.ts';
import { boardColours, type Theme } from '../theme/tokens.ts';
import './board.css';
import { type BoardIndex, boardIndex, wholeBox } from './board-index.ts';
import { BoardLayers } from './board-layers.tsx';
import type { BoardPointer } from './board-pointer.ts';
import { type Camera, fitCamera, type ScreenSize } from './camera.ts';
import { hitsAt } from './hit.ts';
import type { Lit } from './lit.ts';
import { emptyOverlay, type Overlay } from './overlay.ts';
import { type ChosenLook, resizedCamera } from './resized-camera.ts';
import { ScaleBar } from './scale-bar.tsx';
import { type BoardStage, boardSheets, boardStage } from './stage.ts';
import { noUnderlays, type UnderlayPicture } from './underlay-picture.ts';
import { useBoardNavigation } from './use-board-navigation.ts';

export interface BoardProps {
  readonly map: MapDocument;
  readonly theme: Theme;
  /** Null: not chosen yet; the board then fits the whole drawing and says so through `onCamera`. */
  readonly camera: Camera | null;
  readonly onCamera: (camera: Camera) => void;
  readonly onSize?: (size: ScreenSize) => void;
  /** The accessible name. */
  readonly label: string;
  readonly lit?: Lit | null;
  readonly selection?: readonly string[];
  readonly hover?: string | null;
  readonly overlay?: Overlay;
  /** Pictures under the drawing, lowest first; the same list as long as none of them changes. */
  readonly underlays?: readonly UnderlayPicture[];
  readonly cursor?: string;
  readonly onPointer?: (pointer: BoardPointer) => void;
  /** A key pressed on the board that did not move the view. */
  readonly onKey?: (event: KeyboardEvent) => void;
  readonly children?: ReactNode;
}

const nothing: readonly string[] = [];

/** The drawing board: draws a map and tells what the pointer does on it. It holds no truth of its own. */
export function Board({
  map,
  theme,
  camera,
  onCamera,
  onSize,
  label,
  lit = null,
  selection = nothing,
  hover = null,
  overlay = emptyOverlay,
  underlays = noUnderlays,
  cursor = 'default',
  onPointer,
  onKey,
  children,
}: BoardProps) {
  const element = useRef<HTMLDivElement>(null);
  const [sheets] = useState(boardSheets);
  const stage = useRef<BoardStage | null>(null);
  const [size, setSize] = useState<ScreenSize>({ widthPx: 0, heightPx: 0 });
  const fontsReady = useFontsReady();
  const lengths = useMachineSettings((settings) => settings.lengths);

  const lastIndex = useRef<BoardIndex | null>(null);
  const index = useMemo(() => {
    lastIndex.current = boardIndex(map, lastIndex.current);
    return lastIndex.current;
  }, [map]);

  useLayoutEffect(() => {
    if (!element.current) return;
    const made = boardStage(sheets);
    stage.current = made;
    const watcher = new ResizeObserver(([entry]) => {
      if (!entry) return;
      setSize({ widthPx: entry.contentRect.width, heightPx: entry.contentRect.height });
    });
    watcher.observe(element.current);
    return () => {
      watcher.disconnect();
      made.destroy();
      stage.current = null;
    };
  }, [sheets]);

  const chosen = useRef<ChosenLook | null>(null);
  const refitted = useRef<Camera | null>(null);
  const sizeBefore = useRef(size);
  useEffect(() => {
    if (size.widthPx === 0) return;
    onSize?.(size);
    // The whole is asked for where it is used only: this runs in every frame of a pan.
    if (camera === null) {
      onCamera(fitCamera(wholeBox(map), size));
      return;
    }
    const before = chosen.current;
    const resized = sizeBefore.current !== size;
    sizeBefore.current = size;
    // A camera that is neither the chosen one nor its refitting was chosen now, on the board as it is.
    if (!before || (camera !== before.camera && camera !== refitted.current)) {
      chosen.current = { camera, size };
      return;
    }
    if (!resized) return;
    const next = resizedCamera(before, size, wholeBox(map));
    if (next === camera || sameCamera(next, camera)) return;
    refitted.current = next;
    onCamera(next);
  }, [size, camera, map, onCamera, onSize]);

  useLayoutEffect(() => {
    if (!camera || size.widthPx === 0) return;
    const fontFamily = fontsReady ? '"B612", sans-serif' : 'sans-serif';
    const colours = boardColours[theme];
    stage.current?.show({
      index,
      camera,
      size,
      colours,
      lit,
      selection,
      hover,
      overlay,
      underlays,
      fontFamily,
    });
  }, [index, camera, size, theme, lit, selection, hover, overlay, underlays, fontsReady]);

  const navigation = useBoardNavigation({
    element,
    camera,
    size,
    wholeBox: () => wholeBox(map),
    onCamera: (next) => {
      stage.current?.look(next);
      onCamera(next);
    },
    onPointer: (pointer) => onPointer?.(pointer),
    hits: (at, reachMm) => hitsAt(index, at, reachMm),
  });

  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.target !== element.current) return;
    if (event.key === ' ') {
      event.preventDefault();
      navigation.spaceDown.current = true;
      return;
    }
    if (!navigation.moveByKey(event)) onKey?.(event);
  };

  return (
    <div
      ref={element}
      className="board"
      role="application"
      aria-label={label}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the board is worked by keys as well.
      tabIndex={0}
      data-board
      data-camera-px-per-mm={camera?.pxPerMm}
      data-camera-x-px={camera?.xPx}
      data-camera-y-px={camera?.yPx}
      style={{ cursor }}
      onKeyDown={onKeyDown}
      onKeyUp={(event) => {
        if (event.key === ' ') navigation.spaceDown.current = false;
      }}
      onBlur={() => {
        navigation.spaceDown.current = false;
      }}
      onContextMenu={(event) => event.preventDefault()}
      {...navigation.handlers}
    >
      <div className="board-canvases" aria-hidden="true">
        <BoardLayers sheets={sheets} />
      </div>
      {camera ? <ScaleBar camera={camera} lengths={lengths} /> : null}
      {children}
    </div>
  );
}

const sameCamera = (a: Camera, b: Camera): boolean =>
  a.pxPerMm === b.pxPerMm && a.xPx === b.xPx && a.yPx === b.yPx;

/** Canvas text is measured when painted, so it is painted again once the bundled type has arrived. */
function useFontsReady(): boolean {
  const [ready, setReady] = useState(false);
  useEffect(() => {
    let current = true;
    void Promise.allSettled([
      document.fonts.load('13px "B612"'),
      document.fonts.load('bold 18px "B612"'),
    ]).then(() => {
      if (current) setReady(true);
    });
    return () => {
      current = false;
    };
  }, []);
  return ready;
}
