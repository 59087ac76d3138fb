import type { Locator, Page } from '@playwright/test';

/** A hand on the keyboard and mouse in the details beside the board: fills in what is asked there. */
export function detailsHand(page: Page) {
  const side: Locator = page.locator('.side-column');
  const field = (label: string, within: Locator = side): Locator => within.getByLabel(label, { exact: true });
  /** Ids of what is picked, as the details say; null while another page is shown. */
  const picked = (): Promise<string | null> =>
    page.evaluate(() => document.querySelector('[data-picked]')?.getAttribute('data-picked') ?? null);
  return {
    side,
    field,
    /** Does something that picks another thing, and looks until its details are there. */
    toAnother: async (task: () => Promise<void>): Promise<void> => {
      const before = await picked();
      await task();
      await page.waitForFunction((old) => {
        const now = document.querySelector('[data-picked]')?.getAttribute('data-picked') ?? '';
        return now !== '' && now !== old;
      }, before);
    },
    /** Types a whole text or figure into a field. */
    enter: async (label: string, text: string | number): Promise<void> => {
      await field(label).fill(String(text));
    },
    choose: async (label: string, option: string, nth = 0): Promise<void> => {
      await field(label).nth(nth).selectOption({ label: option });
    },
    tick: async (label: string): Promise<void> => {
      await side.getByRole('checkbox', { name: label, exact: true }).check();
    },
    /** One of a row of choices. */
    pick: async (label: string): Promise<void> => {
      await side.getByRole('radio', { name: label, exact: true }).check();
    },
    click: async (name: string | RegExp): Promise<void> => {
      await side.getByRole('button', { name }).click();
    },
    /** Opens a heading, all of which are folded away for a thing just picked; the beginning of its words will do. */
    unfold: async (heading: string): Promise<void> => {
      await side
        .locator('.disclosure-head')
        .filter({ hasText: new RegExp(`^${heading}`) })
        .click();
    },
    show: async (tab: string | RegExp): Promise<void> => {
      await page.getByRole('tab', { name: tab }).click();
    },
  };
}
export type DetailsHand = ReturnType<typeof detailsHand>;
