import type { Page } from '@playwright/test';
import type { Place } from './drawing-hand.ts';

/** Places nearer to an edge of the board than this are brought into view first, in px: the bar of the drawing action lies over its top, the key and the scale over its foot. */
const edgePx = { side: 40, top: 130, bottom: 110 } as const;

/** The board on the screen and how the plan lies on it. */
interface BoardView {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  readonly pxPerMm: number;
  readonly xPx: number;
  readonly yPx: number;
}

/** A practised hand that draws a whole car: it moves the paper to where it draws and rests no longer than it must. */
export function quickHand(page: Page) {
  const board = page.locator('[data-board]');

  const view = (): Promise<BoardView> =>
    board.evaluate((element) => {
      const { left, top, width, height } = element.getBoundingClientRect();
      const camera = (name: string): number => Number(element.getAttribute(`data-camera-${name}`));
      return {
        left,
        top,
        width,
        height,
        pxPerMm: camera('px-per-mm'),
        xPx: camera('x-px'),
        yPx: camera('y-px'),
      };
    });

  const onBoard = ({ pxPerMm, xPx, yPx }: BoardView, [xMm, yMm]: Place): readonly [number, number] => [
    xPx + xMm * pxPerMm,
    yPx - yMm * pxPerMm,
  ];

  const onScreen = (seen: BoardView, place: Place): readonly [number, number] => {
    const [x, y] = onBoard(seen, place);
    return [seen.left + x, seen.top + y];
  };

  /** Moves the paper, as two fingers on a pad do, until the places are in view, or their middle where they do not fit. */
  const bring = async (places: readonly Place[]): Promise<BoardView> => {
    const seen = await view();
    const points = places.map((place) => onBoard(seen, place));
    const shift = (values: readonly number[], from: number, to: number): number => {
      const [least, most] = [Math.min(...values), Math.max(...values)];
      return least >= from && most <= to ? 0 : (least + most - from - to) / 2;
    };
    const xs = points.map(([x]) => x);
    const ys = points.map(([, y]) => y);
    const dx = shift(xs, edgePx.side, seen.width - edgePx.side);
    const dy = shift(ys, edgePx.top, seen.height - edgePx.bottom);
    if (dx === 0 && dy === 0) return seen;
    await page.mouse.move(seen.left + seen.width / 2, seen.top + seen.height / 2);
    // A pad tells itself from a wheel by sideways motion.
    await page.mouse.wheel(dx === 0 ? 1 : dx, dy);
    for (;;) {
      const now = await view();
      if (now.xPx !== seen.xPx || now.yPx !== seen.yPx) return now;
    }
  };

  return {
    board,
    /** Presses one place after another, each brought into view first. */
    trace: async (places: readonly Place[]): Promise<void> => {
      if (places.length > 1) await bring(places);
      for (const place of places) {
        const [x, y] = onScreen(await bring([place]), place);
        // Input keeps its order on the way to the browser; nobody needs to wait in between.
        await Promise.all([page.mouse.move(x, y), page.mouse.down(), page.mouse.up()]);
      }
    },
    /** Drags along a line of places without letting go. */
    sweep: async (places: readonly Place[]): Promise<void> => {
      const seen = await bring(places);
      for (const [index, place] of places.entries()) {
        const [x, y] = onScreen(seen, place);
        await page.mouse.move(x, y, { steps: index === 0 ? 1 : 12 });
        if (index === 0) await page.mouse.down();
      }
      await page.mouse.up();
    },
    /** Takes up a drawing action by its word on the rail. */
    takeUp: async (tool: string): Promise<void> => {
      await page.locator('.tool-rail').getByText(tool, { exact: true }).click();
    },
    /** Chooses beside the rail what is about to be drawn. */
    chooseNext: async (label: string, option: string): Promise<void> => {
      await page.locator('.tool-bar').getByLabel(label, { exact: true }).selectOption({ label: option });
    },
    pickNext: async (label: string): Promise<void> => {
      await page.locator('.tool-bar').getByRole('radio', { name: label, exact: true }).check();
    },
    /** A key for the board, which the last press has made the one that listens. */
    strike: async (name: string): Promise<void> => {
      await page.keyboard.press(name);
    },
    /** Plus or minus on the board, so many times. */
    zoom: async (times: number): Promise<void> => {
      await board.focus();
      for (let i = 0; i < Math.abs(times); i++) await page.keyboard.press(times > 0 ? '+' : '-');
    },
  };
}
export type QuickHand = ReturnType<typeof quickHand>;
