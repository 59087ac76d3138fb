import { useEffect, useRef } from 'react';
import { boardColours, type Theme } from '../theme/tokens.ts';
import { boardIndex } from './board-index.ts';
import type { MarkSample } from './mark-samples.ts';
import { emptyOverlay } from './overlay.ts';
import { groundMarks } from './paint-plan.ts';
import { sceneOf } from './scene.ts';

const size = { widthPx: 46, heightPx: 28 };

/** One mark of the board, drawn by the board's own painters. */
export function MarkPicture({ sample, theme }: { readonly sample: MarkSample; readonly theme: Theme }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const target = canvas.current;
    const c = target?.getContext('2d');
    if (!target || !c) return;
    const ratio = window.devicePixelRatio || 1;
    target.width = size.widthPx * ratio;
    target.height = size.heightPx * ratio;
    c.scale(ratio, ratio);
    const scene = sceneOf({
      index: boardIndex(sample.map),
      camera: { pxPerMm: 1, xPx: size.widthPx / 2, yPx: size.heightPx / 2 },
      size,
      colours: boardColours[theme],
      lit: sample.lit,
      selection: [],
      hover: null,
      overlay: emptyOverlay,
      fontFamily: 'sans-serif',
    });
    for (const paint of groundMarks) paint(c, scene);
  }, [sample, theme]);
  return <canvas ref={canvas} style={{ width: size.widthPx, height: size.heightPx }} />;
}
