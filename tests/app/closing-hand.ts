import { expect, type Locator, type Page } from '@playwright/test';

/** The first order of a job is worked out from nothing; on a busy machine that takes its time. */
const ranked = { timeout: 40_000 };

/** What is found where, as a technician would describe it. */
export interface FindTold {
  readonly damage: string;
  readonly why: string;
  readonly wire: string;
  readonly note: string;
}

/** A hand that takes a job from intake to the paid bill. */
export function closingHand(page: Page) {
  const button = (name: string | RegExp): Locator => page.getByRole('button', { name });
  const step = (name: string): Locator => page.getByRole('region', { name });
  const readingForm = (): Locator => page.getByRole('form', { name: /Enter a reading/ });
  const opening = (panel: string): Locator =>
    page
      .locator('.dig-entry')
      .filter({ has: page.locator('.dig-head', { hasText: panel }) })
      .first();

  return {
    step,
    opening,
    readingForm,
    /** Intake from the list of maps. */
    takeIn: async (told: {
      readonly model: RegExp;
      readonly plate: string;
      readonly odometer: string;
      readonly complaint: string;
      readonly failureType: string;
      readonly circuit: string;
      readonly failsToo?: string;
      readonly disturbed?: string;
    }): Promise<void> => {
      await button(told.model).click();
      await page.getByLabel('Plate or stock number').fill(told.plate);
      await page.getByLabel('Odometer', { exact: true }).fill(told.odometer);
      await page.getByLabel(/^Complaint/).fill(told.complaint);
      if (told.disturbed) await page.getByRole('checkbox', { name: told.disturbed }).check();
      await page.getByLabel('Failure type').selectOption({ label: told.failureType });
      await page.getByLabel('Circuit under search').selectOption({ label: told.circuit });
      if (told.failsToo) {
        await page.getByRole('group', { name: told.failsToo }).getByLabel('Fails too').check();
      }
      await button('Start the job').click();
      await expect(page.locator('.dig-entry').first()).toBeVisible(ranked);
    },
    /** Begins a reading of a kind. */
    beginReading: async (kind: string): Promise<Locator> => {
      await page.keyboard.press('r');
      await readingForm().getByLabel('Test', { exact: true }).selectOption({ label: kind });
      return readingForm();
    },
    keepReading: async (): Promise<void> => {
      await readingForm().getByRole('button', { name: 'Keep' }).click();
      await expect(readingForm()).toBeHidden();
    },
    /** Takes off what comes first until a panel is off, cautions read first, and says what the look then first showed. */
    openAndLook: async (panel: string, seen: string): Promise<void> => {
      const settled = (): Promise<void> =>
        expect(page.locator('.what-changed')).toHaveAttribute('data-thinking', 'false', ranked);
      const unfold = async (entry: Locator): Promise<void> => {
        const head = entry.locator('.dig-head');
        if ((await head.getAttribute('aria-expanded')) !== 'true') await head.click();
      };
      await settled();
      while ((await opening(panel).count()) > 0) {
        const entry = opening(panel);
        await unfold(entry);
        const understood = entry.getByRole('button', { name: /read and understood/ });
        if (await understood.count()) await understood.first().click();
        else
          await entry
            .getByRole('button', { name: /mark off$/ })
            .first()
            .click();
        await settled();
      }
      const look = page.locator('.dig-entry').first();
      await expect(look).toContainText('Already open');
      await unfold(look);
      await look.getByRole('button', { name: seen }).click();
    },
    /** From the proved look to the place where the job is closed; with a distance, narrowed to it by tape first. */
    toClose: async (metres?: string): Promise<void> => {
      const found = page.getByRole('region', { name: 'Cause found, not proved yet' });
      await expect(found).toBeVisible();
      if (metres !== undefined) {
        await found.getByRole('textbox').first().fill(metres);
        await found.getByRole('button', { name: 'Set the place' }).click();
      }
      await found.getByRole('link', { name: 'Repair and close' }).click();
      await expect(step('What was found')).toBeVisible();
    },
    /** Describes a find; photos go in before it is kept. */
    describe: async (article: Locator, find: FindTold): Promise<void> => {
      await article.getByLabel('Damage', { exact: true }).selectOption({ label: find.damage });
      await article.getByLabel('Why').selectOption({ label: find.why });
      await article.getByLabel('Damaged wire').selectOption({ label: find.wire });
      await article.getByLabel('Note').fill(find.note);
    },
    prove: async (): Promise<void> => {
      const cause = step('What was found').getByRole('article', { name: 'Cause found, not proved yet' });
      for (const box of await cause.getByRole('checkbox').all()) await box.check();
      await cause.getByRole('button', { name: 'Keep the proof' }).click();
    },
    repair: async (article: string | RegExp, done: readonly string[], joins?: string): Promise<void> => {
      const repaired = step('Repair, and what stops it rubbing now').getByRole('article', { name: article });
      if ((await repaired.getByRole('checkbox').count()) === 0) {
        await repaired.getByRole('button', { name: 'Keep the repair' }).click();
      }
      for (const name of done) await repaired.getByRole('checkbox', { name }).check();
      if (joins !== undefined) await repaired.getByLabel('Joins', { exact: true }).fill(joins);
      await repaired.getByRole('button', { name: 'Keep the repair' }).click();
    },
    lookAlong: async (): Promise<void> => {
      const along = step('Look along the loom');
      for (const sound of await along.getByRole('radio', { name: 'Sound' }).all()) await sound.check();
      await along.getByRole('button', { name: 'Keep the look' }).click();
    },
    /** Answers every test of the proof that asks for no more than good. */
    allGood: async (): Promise<void> => {
      const good = step('Proof: the same tests again').getByRole('button', { name: /^Good:/ });
      for (let left = await good.count(); left > 0; left--) {
        await good.first().click();
        await expect(good).toHaveCount(left - 1);
      }
    },
    refit: async (): Promise<void> => {
      const refit = step('Refit');
      for (;;) {
        const understood = refit.getByRole('button', { name: /read and understood/ });
        const on = refit.getByRole('button', { name: /^Back on/ });
        if (await understood.count()) await understood.first().click();
        else if (await on.count()) {
          const left = await on.count();
          await on.first().click();
          await expect(on).toHaveCount(left - 1);
        } else break;
      }
      await expect(refit.getByText('Everything that came off is back on.')).toBeVisible();
    },
    close: async (): Promise<void> => {
      const end = step('Close the job');
      await expect(end.getByText('Nothing is missing.')).toBeVisible();
      await end.getByRole('button', { name: 'Close the job' }).click();
      await expect(end.getByText('Closed: Proved and cured')).toBeVisible();
      await expect(page.getByText('On disk')).toBeVisible();
    },
  };
}
