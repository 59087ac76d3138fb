import type { TextMeasure } from './svg-pen.ts';

/** Measures text as the browser sets it in a font family. Needs a page. */
export function canvasMeasure(fontFamily: string): TextMeasure {
  const c = document.createElement('canvas').getContext('2d');
  return (text, sizePx) => {
    if (!c) return 0;
    c.font = `${sizePx}px ${fontFamily}`;
    return c.measureText(text).width;
  };
}
