import { useEffect, useMemo, useState } from 'react';
import type { MapDocument } from '#core/map/map-document.ts';
import type { UnderlayPicture } from '../../board/underlay-picture.ts';
import { hostClient } from '../../session/host.ts';
import { blobOf } from './picture-bytes.ts';

/** Decoded pictures by the SHA-256 of their bytes; null for those this machine does not have. */
type Pictures = ReadonlyMap<string, ImageBitmap | null>;

/** The map's pictures as the board paints them, lowest first; bytes are read once each. */
export function useUnderlays(map: MapDocument) {
  const [pictures, setPictures] = useState<Pictures>(new Map());
  const wanted = [...new Set([...map.underlays.values()].map((each) => each.imageSha256))].sort().join(' ');
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is already read need not be read again.
  useEffect(() => {
    let current = true;
    const read = async (sha256: string): Promise<void> => {
      const kept = await hostClient()('picture.read', { sha256 });
      const bitmap = kept.ok ? await decoded(kept.value.base64, kept.value.mediaType) : null;
      if (current) setPictures((before) => new Map(before).set(sha256, bitmap));
    };
    for (const sha256 of wanted.split(' ')) if (sha256 !== '' && !pictures.has(sha256)) void read(sha256);
    return () => {
      current = false;
    };
  }, [wanted]);
  const { underlays } = map;
  const shown: readonly UnderlayPicture[] = useMemo(
    () =>
      [...underlays.values()]
        .sort((a, b) => a.order - b.order)
        .map((underlay) => ({ underlay, picture: pictures.get(underlay.imageSha256) ?? null })),
    [underlays, pictures],
  );
  /** Pictures whose bytes were asked for and are not here. */
  const gone = useMemo(
    () => new Set([...pictures].flatMap(([sha256, bitmap]) => (bitmap ? [] : [sha256]))),
    [pictures],
  );
  return { shown, gone };
}

async function decoded(base64: string, mediaType: string): Promise<ImageBitmap | null> {
  try {
    return await createImageBitmap(blobOf(base64, mediaType));
  } catch {
    return null;
  }
}
