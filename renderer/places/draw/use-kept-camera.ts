import { useEffect, useState } from 'react';
import { z } from 'zod';
import { type Camera, scaleLimits } from '../../board/camera.ts';
import { hostClient } from '../../session/host.ts';

const cameraSchema = z.strictObject({
  pxPerMm: z.number().min(scaleLimits.min).max(scaleLimits.max),
  xPx: z.number(),
  yPx: z.number(),
});
const keepAfterMs = 800;

/** The camera in kept text; null when there is none or it makes no sense, and the whole drawing is shown. */
export function readCamera(text: string | null): Camera | null {
  if (text === null) return null;
  try {
    const read = cameraSchema.safeParse(JSON.parse(text));
    return read.success ? read.data : null;
  } catch {
    return null;
  }
}

/** Where the user last looked on this map, on this machine. `ready` once that is known. */
export function useKeptCamera(mapId: string) {
  const [camera, setCamera] = useState<Camera | null>(null);
  const [ready, setReady] = useState(false);
  const key = `draw.camera.${mapId}`;
  useEffect(() => {
    let current = true;
    void hostClient()('place.read', { key }).then((kept) => {
      if (!current) return;
      if (kept.ok) setCamera(readCamera(kept.value.text));
      setReady(true);
    });
    return () => {
      current = false;
    };
  }, [key]);
  useEffect(() => {
    if (!ready || !camera) return;
    const timer = setTimeout(
      () => void hostClient()('place.keep', { key, text: JSON.stringify(camera) }),
      keepAfterMs,
    );
    return () => clearTimeout(timer);
  }, [ready, camera, key]);
  return { camera, setCamera, ready };
}
