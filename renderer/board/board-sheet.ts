import type Konva from 'konva/lib/Core.js';
import type { ScreenSize } from './camera.ts';

/** Where a painted sheet lies on the board, and how much larger than painted it is shown. */
export interface SheetPlace {
  readonly xPx: number;
  readonly yPx: number;
  readonly stretched: number;
}

/** One canvas of the board, measured in CSS pixels and as sharp as the screen. */
export interface Sheet {
  /** Gives it a size of its own, which may reach beyond the board, and clears it. */
  readonly clear: (size: ScreenSize) => void;
  /** Paints on top of what is there. */
  readonly paint: (work: (c: CanvasRenderingContext2D) => void) => void;
  /** Moves and stretches what was painted without painting it again; null puts it out of sight. */
  readonly lay: (place: SheetPlace | null) => void;
}

/** A sheet that is a layer of the stage. */
export interface LayerSheet extends Sheet {
  /** Takes the layer when the stage has made it, and lets it go. */
  readonly hold: (layer: Konva.Layer | null) => void;
  /** What the layer's only shape draws: whatever is being painted just now. */
  readonly sceneFunc: (context: Konva.Context) => void;
}

export const devicePixels = (): number => globalThis.devicePixelRatio || 1;

/** A sheet still without its layer; without one it paints nothing. An opaque one must be painted all over. */
export function layerSheet(opaque: boolean): LayerSheet {
  let layer: Konva.Layer | null = null;
  let work: ((c: CanvasRenderingContext2D) => void) | null = null;
  let transform = '';
  return {
    hold: (held) => {
      layer = held;
      transform = '';
      if (!layer) return;
      if (opaque) makeOpaque(layer);
      Object.assign(layer.getNativeCanvasElement().style, { transformOrigin: '0 0', display: 'none' });
    },
    sceneFunc: (context) => work?.(context._context as CanvasRenderingContext2D),
    clear: ({ widthPx, heightPx }) => {
      const canvas = layer?.getCanvas();
      if (!canvas) return;
      const ratio = devicePixels();
      if (canvas.getPixelRatio() !== ratio) canvas.setPixelRatio(ratio);
      // Whole device pixels, or the browser stretches the picture by a part of one and blurs it; the
      // thousandth keeps a rounding error from costing one.
      const whole = (px: number): number => (Math.ceil(px * ratio) + 0.001) / ratio;
      canvas.setSizeIfChanged(whole(widthPx), whole(heightPx));
      canvas.getContext().clear();
    },
    paint: (next) => {
      work = next;
      // Not batched: the caller is in a frame already and watches the time.
      layer?.drawScene();
      work = null;
    },
    lay: (place) => {
      if (!layer) return;
      const { style } = layer.getNativeCanvasElement();
      // Not only invisible: the browser would go on handing an unseen canvas to the screen while it is painted.
      const display = place ? 'block' : 'none';
      if (style.display !== display) style.display = display;
      if (!place) return;
      const next = `translate(${place.xPx}px, ${place.yPx}px) scale(${place.stretched})`;
      if (transform !== next) style.transform = next;
      transform = next;
    },
  };
}

/**
 * Layers are made to be seen through, which has the browser blend every pixel of them at every frame; a large
 * opaque one costs it a third. A canvas is one or the other from its first context on, hence a new one.
 */
function makeOpaque(layer: Konva.Layer): void {
  const canvas = layer.getCanvas();
  const before = canvas._canvas;
  const after = before.cloneNode() as HTMLCanvasElement;
  const c = after.getContext('2d', { alpha: false });
  if (!c) return;
  before.replaceWith(after);
  canvas._canvas = after;
  canvas.getContext()._context = c;
}
