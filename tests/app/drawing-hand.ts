import type { Locator, Page } from '@playwright/test';

/** A place on the plan view, in mm: x rearward, y to the right. */
export type Place = readonly [xMm: number, yMm: number];

/** Two presses on one place within this time are a double press; a person changing tools takes longer. */
const doublePressMs = 500;

/** A hand with a mouse over the drawing board: presses at places on the plan, wherever they lie on the screen. */
export function drawingHand(page: Page) {
  const board: Locator = page.locator('[data-board]');

  const screenOf = async ([xMm, yMm]: Place): Promise<{ x: number; y: number }> => {
    const box = await board.boundingBox();
    const [pxPerMm, xPx, yPx] = await Promise.all(
      ['px-per-mm', 'x-px', 'y-px'].map(async (name) =>
        Number(await board.getAttribute(`data-camera-${name}`)),
      ),
    );
    if (!box || pxPerMm === undefined || xPx === undefined || yPx === undefined) throw new Error('no board');
    return { x: box.x + xPx + xMm * pxPerMm, y: box.y + yPx - yMm * pxPerMm };
  };

  const press = async (place: Place): Promise<void> => {
    const { x, y } = await screenOf(place);
    await page.mouse.move(x, y, { steps: 3 });
    await page.mouse.down();
    await page.mouse.up();
    // Two presses within the double-press time at different places are two presses; a person is slower too.
    await page.waitForTimeout(60);
  };

  return {
    board,
    press,
    pressAll: async (places: readonly Place[]): Promise<void> => {
      for (const place of places) await press(place);
    },
    drag: async (from: Place, to: Place): Promise<void> => {
      const start = await screenOf(from);
      const end = await screenOf(to);
      await page.mouse.move(start.x, start.y);
      await page.mouse.down();
      await page.mouse.move(end.x, end.y, { steps: 8 });
      await page.mouse.up();
    },
    /** Brings the pointer over a place without pressing. */
    hover: async (place: Place): Promise<void> => {
      const { x, y } = await screenOf(place);
      await page.mouse.move(x, y, { steps: 3 });
    },
    /** Whether a place is in view. */
    seen: async (place: Place): Promise<boolean> => {
      const { x, y } = await screenOf(place);
      const box = await board.boundingBox();
      return box !== null && x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height;
    },
    take: async (tool: string): Promise<void> => {
      await page.getByRole('button', { name: tool }).first().click();
      await page.waitForTimeout(doublePressMs);
    },
    key: async (name: string): Promise<void> => {
      await page.keyboard.press(name);
      await page.waitForTimeout(doublePressMs);
    },
  };
}
