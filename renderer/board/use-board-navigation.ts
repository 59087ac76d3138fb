import { type KeyboardEvent, type PointerEvent, type RefObject, useEffect, useRef } from 'react';
import type { Bounds } from '#core/geometry/bounds.ts';
import type { BoardPointer } from './board-pointer.ts';
import { type Camera, panBy, type ScreenPoint, type ScreenSize, toPlan } from './camera.ts';
import type { Hit } from './hit.ts';
import { keyCamera } from './key-camera.ts';
import { turnWheel } from './turn-wheel.ts';
import { twoFingerCamera } from './two-fingers.ts';

const mouseReachPx = 9;
const fingerReachPx = 22;
const doublePressMs = 400;
const doublePressPx = 6;

interface Navigation {
  readonly element: RefObject<HTMLDivElement | null>;
  readonly camera: Camera | null;
  readonly size: ScreenSize;
  readonly wholeBox: () => Bounds;
  readonly onCamera: (camera: Camera) => void;
  readonly onPointer: (pointer: BoardPointer) => void;
  readonly hits: (at: BoardPointer['at'], reachMm: number) => readonly Hit[];
}

/** Moving about on the board: middle button, space-drag, two fingers, wheel, pinch, arrows, plus, minus, F. */
export function useBoardNavigation(navigation: Navigation) {
  const latest = useRef(navigation);
  latest.current = navigation;
  const fingers = useRef(new Map<number, ScreenPoint>());
  const panning = useRef<number | null>(null);
  const pressing = useRef<number | null>(null);
  const spaceDown = useRef(false);
  /** With the view it was made in: where the paper was moved in between, two presses are at two places. */
  const lastPress = useRef<{ at: ScreenPoint; timeMs: number; camera: Camera | null } | null>(null);
  /** The camera may change several times before React hands the new one back. */
  const camera = useRef(navigation.camera);
  camera.current = navigation.camera;

  const turn = (next: Camera): void => {
    camera.current = next;
    latest.current.onCamera(next);
  };

  useEffect(() => {
    const element = latest.current.element.current;
    if (!element) return;
    const onWheel = (event: WheelEvent): void => {
      event.preventDefault();
      if (!camera.current) return;
      const rect = element.getBoundingClientRect();
      const at = { xPx: event.clientX - rect.left, yPx: event.clientY - rect.top };
      const { deltaX, deltaY, deltaMode, ctrlKey, shiftKey } = event;
      camera.current = turnWheel(camera.current, at, {
        deltaX,
        deltaY,
        deltaMode,
        pinch: ctrlKey,
        shift: shiftKey,
      });
      latest.current.onCamera(camera.current);
    };
    // React listens passively to the wheel; the page must not scroll under the board.
    element.addEventListener('wheel', onWheel, { passive: false });
    return () => element.removeEventListener('wheel', onWheel);
  }, []);

  const placeOf = (event: PointerEvent): ScreenPoint => {
    const rect = latest.current.element.current?.getBoundingClientRect();
    return { xPx: event.clientX - (rect?.left ?? 0), yPx: event.clientY - (rect?.top ?? 0) };
  };

  const tell = (type: BoardPointer['type'], event: PointerEvent, screen: ScreenPoint): void => {
    if (!camera.current) return;
    const at = toPlan(camera.current, screen);
    const reachMm = (event.pointerType === 'touch' ? fingerReachPx : mouseReachPx) / camera.current.pxPerMm;
    latest.current.onPointer({
      type,
      at,
      screen,
      hits: latest.current.hits(at, reachMm),
      reachMm,
      shift: event.shiftKey,
      alt: event.altKey,
    });
  };

  const onPointerDown = (event: PointerEvent<HTMLDivElement>): void => {
    const screen = placeOf(event);
    event.currentTarget.setPointerCapture(event.pointerId);
    fingers.current.set(event.pointerId, screen);
    if (fingers.current.size === 2) {
      if (pressing.current !== null) tell('cancel', event, screen);
      pressing.current = null;
      return;
    }
    if (event.button === 1 || (event.button === 0 && spaceDown.current)) {
      event.preventDefault();
      panning.current = event.pointerId;
      return;
    }
    if (event.button !== 0 || fingers.current.size > 1) return;
    pressing.current = event.pointerId;
    const before = lastPress.current;
    const double =
      before !== null &&
      event.timeStamp - before.timeMs < doublePressMs &&
      before.camera === camera.current &&
      Math.hypot(before.at.xPx - screen.xPx, before.at.yPx - screen.yPx) < doublePressPx;
    lastPress.current = double ? null : { at: screen, timeMs: event.timeStamp, camera: camera.current };
    tell(double ? 'double' : 'down', event, screen);
  };

  const onPointerMove = (event: PointerEvent<HTMLDivElement>): void => {
    const screen = placeOf(event);
    const before = fingers.current.get(event.pointerId);
    if (before && camera.current) {
      const other = [...fingers.current].find(([id]) => id !== event.pointerId)?.[1];
      fingers.current.set(event.pointerId, screen);
      if (other) {
        turn(twoFingerCamera(camera.current, [before, other], [screen, other]));
        return;
      }
      if (panning.current === event.pointerId) {
        turn(panBy(camera.current, screen.xPx - before.xPx, screen.yPx - before.yPx));
        return;
      }
    }
    tell('move', event, screen);
  };

  const letGo = (event: PointerEvent<HTMLDivElement>, type: 'up' | 'cancel'): void => {
    const screen = placeOf(event);
    fingers.current.delete(event.pointerId);
    if (panning.current === event.pointerId) panning.current = null;
    if (pressing.current !== event.pointerId) return;
    pressing.current = null;
    tell(type, event, screen);
  };

  /** True when the key moved the view and nobody else need look at it. */
  const moveByKey = (event: KeyboardEvent): boolean => {
    if (!camera.current || event.ctrlKey || event.metaKey || event.altKey) return false;
    const { size, wholeBox } = latest.current;
    const next = keyCamera(camera.current, event.key, size, wholeBox());
    if (!next) return false;
    event.preventDefault();
    turn(next);
    return true;
  };

  return {
    spaceDown,
    moveByKey,
    handlers: {
      onPointerDown,
      onPointerMove,
      onPointerUp: (event: PointerEvent<HTMLDivElement>) => letGo(event, 'up'),
      onPointerCancel: (event: PointerEvent<HTMLDivElement>) => letGo(event, 'cancel'),
      onPointerLeave: (event: PointerEvent<HTMLDivElement>) => tell('leave', event, placeOf(event)),
    },
  };
}
