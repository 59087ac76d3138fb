import type { Underlay } from '#core/map/records.ts';

/** A picture under the drawing, with its decoded bytes when they are at hand. */
export interface UnderlayPicture {
  readonly underlay: Underlay;
  readonly picture: CanvasImageSource | null;
}

export const noUnderlays: readonly UnderlayPicture[] = [];
