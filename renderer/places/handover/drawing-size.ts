import { mostSidePx } from '../../drawing-export/map-png.ts';

/** How large a drawing comes out as a picture. */
export interface PictureSize {
  /** What the SVG drawing is enlarged by. */
  readonly scale: number;
  readonly widthPx: number;
  readonly heightPx: number;
  /** The wish was more than a picture may have, so it was held back. */
  readonly held: boolean;
}

/** The size of a picture of an SVG drawing, enlarged by a wish but held to what a picture may have. */
export function pictureSize(
  svg: { readonly widthPx: number; readonly heightPx: number },
  wish: { readonly scale: number } | { readonly widthPx: number },
): PictureSize {
  const wanted = 'scale' in wish ? wish.scale : wish.widthPx / svg.widthPx;
  const most = mostSidePx / Math.max(svg.widthPx, svg.heightPx);
  const scale = Math.min(wanted, most);
  return {
    scale,
    widthPx: Math.round(svg.widthPx * scale),
    heightPx: Math.round(svg.heightPx * scale),
    held: wanted > most,
  };
}
