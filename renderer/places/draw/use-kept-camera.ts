import { useCallback, useEffect, useRef, useState } from 'react';
import { z } from 'zod';
import type { Bounds } from '#core/geometry/bounds.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { wholeBox } from '../../board/board-index.ts';
import { type Camera, type ScreenSize, scaleLimits, toPlan } from '../../board/camera.ts';
import { resizedCamera } from '../../board/resized-camera.ts';
import { hostClient } from '../../session/host.ts';

const sidePx = z.number().positive().optional();
/** Where one looked: the place in the middle, the scale, and the board it was seen on (not known of older looks). */
const lookSchema = z.strictObject({
  xMm: z.number(),
  yMm: z.number(),
  pxPerMm: z.number().min(scaleLimits.min).max(scaleLimits.max),
  widthPx: sidePx,
  heightPx: sidePx,
});
export type Look = z.infer<typeof lookSchema>;

const keepAfterMs = 800;

/** The look in kept text; null when there is none or it makes no sense, and the whole drawing is shown. */
export function readLook(text: string | null): Look | null {
  if (text === null) return null;
  try {
    const read = lookSchema.safeParse(JSON.parse(text));
    return read.success ? read.data : null;
  } catch {
    return null;
  }
}

/** What a camera has in the middle of a screen. */
export function lookOf(camera: Camera, size: ScreenSize): Look {
  const middle = toPlan(camera, { xPx: size.widthPx / 2, yPx: size.heightPx / 2 });
  return { ...middle, pxPerMm: camera.pxPerMm, ...size };
}

/** The camera that shows a look again, on a board of another size what it showed there of the `whole` drawing. */
export function cameraOf(look: Look, size: ScreenSize, whole: Bounds): Camera {
  const before = { widthPx: look.widthPx ?? size.widthPx, heightPx: look.heightPx ?? size.heightPx };
  const { xMm, yMm, pxPerMm } = look;
  const camera = {
    pxPerMm,
    xPx: before.widthPx / 2 - xMm * pxPerMm,
    yPx: before.heightPx / 2 + yMm * pxPerMm,
  };
  return resizedCamera({ camera, size: before }, size, whole);
}

/** Where the user last looked on this map, on this machine. `ready` once that is known. */
export function useKeptCamera(map: MapDocument) {
  const [camera, setCamera] = useState<Camera | null>(null);
  const [ready, setReady] = useState(false);
  const kept = useRef<Look | null>(null);
  const size = useRef<ScreenSize>({ widthPx: 1, heightPx: 1 });
  const key = `draw.look.${map.id}`;
  const mapNow = useRef(map);
  mapNow.current = map;
  useEffect(() => {
    let current = true;
    void hostClient()('place.read', { key }).then((read) => {
      if (!current) return;
      kept.current = read.ok ? readLook(read.value.text) : null;
      setReady(true);
    });
    return () => {
      current = false;
    };
  }, [key]);
  useEffect(() => {
    if (!ready || !camera) return;
    const timer = setTimeout(() => {
      const text = JSON.stringify(lookOf(camera, size.current));
      void hostClient()('place.keep', { key, text });
    }, keepAfterMs);
    return () => clearTimeout(timer);
  }, [ready, camera, key]);
  /** The board's first wish is to show all; a kept look takes its place. */
  const changeCamera = useCallback((next: Camera): void => {
    const look = kept.current;
    kept.current = null;
    setCamera(look ? cameraOf(look, size.current, wholeBox(mapNow.current)) : next);
  }, []);
  const keepSize = useCallback((next: ScreenSize): void => {
    size.current = next;
  }, []);
  return { camera, setCamera: changeCamera, ready, size, keepSize };
}
