import type { Sheet, SheetPlace } from '#renderer/board/board-sheet.ts';

/** Words written on a page, and where. */
export interface Written {
  readonly text: string;
  readonly leftPx: number;
  readonly yPx: number;
}

/** How wide the page takes each letter to be. */
export const letterPx = 7;

/** A drawing surface that keeps only the words written on it and how many lines were stroked. */
export function paintedPage() {
  const written: Written[] = [];
  const state: Record<string | symbol, unknown> = {};
  let strokes = 0;
  const own: Record<string | symbol, unknown> = {
    measureText: (text: string) => ({ width: text.length * letterPx }),
    fillText: (text: string, leftPx: number, yPx: number) => written.push({ text, leftPx, yPx }),
    stroke: () => {
      strokes++;
    },
  };
  const c = new Proxy(state, {
    get: (target, key) => own[key] ?? target[key] ?? (() => undefined),
  }) as unknown as CanvasRenderingContext2D;
  return { c, written, strokes: () => strokes };
}

/** A sheet of such paper, and where it lies. */
export function paperSheet(): Sheet & { readonly place: () => SheetPlace | null } {
  const { c } = paintedPage();
  let place: SheetPlace | null = null;
  return {
    clear: () => {},
    paint: (work) => work(c),
    lay: (next) => {
      place = next;
    },
    place: () => place,
  };
}
