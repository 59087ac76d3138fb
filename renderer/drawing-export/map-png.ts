import { fail, ok, type Result } from '#core/quantity/result.ts';

/** Browsers refuse or blank a larger canvas; common practice, no source. */
export const mostSidePx = 16_000;

/**
 * An SVG drawing as a PNG, drawn by the browser itself; `scale` 2 gives twice the SVG's pixels. Needs a page.
 * Refuses (`bad-value`) a picture larger than a canvas may be, and gives `picture-unreadable` when the
 * browser will not draw it.
 */
export async function mapPng(svg: string, scale = 2): Promise<Result<Blob>> {
  const address = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
  const unreadable = fail({ code: 'picture-unreadable', file: 'SVG', mediaType: 'image/svg+xml' } as const);
  try {
    const image = new Image();
    image.src = address;
    try {
      await image.decode();
    } catch {
      return unreadable;
    }
    const widthPx = Math.round(image.naturalWidth * scale);
    const heightPx = Math.round(image.naturalHeight * scale);
    const sidePx = Math.max(widthPx, heightPx);
    if (!(Math.min(widthPx, heightPx) >= 1 && sidePx <= mostSidePx)) {
      return fail({ code: 'bad-value', field: 'scale', value: scale, allowed: `1 .. ${mostSidePx} px` });
    }
    const canvas = document.createElement('canvas');
    canvas.width = widthPx;
    canvas.height = heightPx;
    canvas.getContext('2d')?.drawImage(image, 0, 0, widthPx, heightPx);
    const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/png'));
    return blob ? ok(blob) : unreadable;
  } finally {
    URL.revokeObjectURL(address);
  }
}
