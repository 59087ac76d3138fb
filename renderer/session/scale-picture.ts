import { isOversized, oversized, readPictureHeader } from '#core/map/picture-header.ts';
import { fail, ok, type Result } from '#core/quantity/result.ts';
import { readFile } from './read-file.ts';

/** A picture ready to be kept under a drawing: upright, and no larger than needed. */
export interface ScaledPicture {
  readonly bytes: Uint8Array;
  readonly mediaType: 'image/jpeg' | 'image/png' | 'image/webp';
  /** As shown, after any turn the camera noted. */
  readonly widthPx: number;
  readonly heightPx: number;
}

export interface ScaleProgress {
  /** Told the share done, 0 to 1, never falling. */
  readonly onProgress?: (share: number) => void;
  readonly signal?: AbortSignal;
  /** Where a smaller picture is enough; 4,000 px when absent. */
  readonly longestPx?: number;
}

/** A car of 4.5 m at about a millimetre a pixel: finer cannot be traced by hand. */
export const longestSidePx = 4_000;
/** Beyond this nobody photographs or scans; the browser would run out of memory decoding it. */
const mostFileBytes = 200_000_000;
const quality = 0.9;

/**
 * Reads a picture file for use under a drawing: turned as its camera noted (EXIF), scaled down to at most
 * 4,000 px a side in halving steps, and written anew, which also leaves out where it was taken. A PNG
 * small enough already is kept byte for byte, so that a scan's lines stay sharp. Needs a page. Problems:
 * `too-large`, `picture-oversized`, `picture-unreadable` for what the browser cannot decode, `stopped` when the signal says so.
 */
export async function scalePicture(file: File, progress: ScaleProgress = {}): Promise<Result<ScaledPicture>> {
  const { onProgress = () => {}, signal, longestPx = longestSidePx } = progress;
  const stopped = fail({ code: 'stopped' } as const);
  const unreadable = fail({ code: 'picture-unreadable', file: file.name, mediaType: file.type } as const);
  if (file.size > mostFileBytes) {
    return fail({ code: 'too-large', thing: file.name, bytes: file.size, mostBytes: mostFileBytes });
  }
  onProgress(0);
  const read = await readFile(file, (share) => onProgress(share * 0.3), signal);
  if (signal?.aborted) return stopped;
  if (!read) return unreadable;
  // The size is asked before anything is decoded: a few bytes can claim more pixels than there is memory.
  const header = readPictureHeader(read);
  if (!header) return unreadable;
  if (isOversized(header)) return fail(oversized(file.name, header));
  let bitmap: ImageBitmap;
  try {
    bitmap = await createImageBitmap(new Blob([read], { type: header.mediaType }), {
      imageOrientation: 'from-image',
    });
  } catch {
    return unreadable;
  }
  onProgress(0.6);
  try {
    if (signal?.aborted) return stopped;
    const { width, height } = bitmap;
    const wanted = fitted(width, height, longestPx);
    const small = wanted.widthPx === width;
    if (small && header.mediaType === 'image/png') {
      onProgress(1);
      return ok({ bytes: read, mediaType: 'image/png', widthPx: width, heightPx: height });
    }
    const canvas = await inHalves(bitmap, wanted, (share) => onProgress(0.6 + share * 0.2), signal);
    if (!canvas || signal?.aborted) return stopped;
    const keepsItsKind = header.mediaType === 'image/png' || header.mediaType === 'image/webp';
    const mediaType = keepsItsKind ? header.mediaType : 'image/jpeg';
    const written = await canvas.convertToBlob({ type: mediaType, quality });
    if (signal?.aborted) return stopped;
    const bytes = new Uint8Array(await written.arrayBuffer());
    onProgress(1);
    return ok({ bytes, mediaType, ...wanted });
  } finally {
    bitmap.close();
  }
}

/** The largest size of the same shape within the longest side. */
function fitted(widthPx: number, heightPx: number, longestPx: number): { widthPx: number; heightPx: number } {
  const scale = Math.min(1, longestPx / Math.max(widthPx, heightPx));
  const side = (px: number): number => Math.max(1, Math.round(px * scale));
  return { widthPx: side(widthPx), heightPx: side(heightPx) };
}

/**
 * Draws the picture at its new size by halves, each step averaging four pixels: one large step would skip
 * most of them and leave jagged edges. Null when stopped.
 */
async function inHalves(
  bitmap: ImageBitmap,
  wanted: { readonly widthPx: number; readonly heightPx: number },
  onProgress: (share: number) => void,
  signal: AbortSignal | undefined,
): Promise<OffscreenCanvas | null> {
  let from: ImageBitmap | OffscreenCanvas = bitmap;
  const steps = Math.max(1, Math.ceil(Math.log2(bitmap.width / wanted.widthPx)));
  for (let step = 1; step <= steps; step++) {
    if (signal?.aborted) return null;
    const left = 2 ** (steps - step);
    const canvas = new OffscreenCanvas(
      Math.min(from.width, wanted.widthPx * left),
      Math.min(from.height, wanted.heightPx * left),
    );
    const c = canvas.getContext('2d');
    if (!c) return null;
    c.imageSmoothingQuality = 'high';
    c.drawImage(from, 0, 0, canvas.width, canvas.height);
    from = canvas;
    onProgress(step / steps);
    // One step a turn, so that the page stays alive and a stop is heard.
    await new Promise((resolve) => setTimeout(resolve, 0));
  }
  return from as OffscreenCanvas;
}
