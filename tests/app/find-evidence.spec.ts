import { expect as expectSoon, type Locator, type Page, test } from '@playwright/test';
import type { RequestInput, RequestName } from '#electron/contract/contract.ts';
import { tokenHeader } from '#electron/contract/token-header.ts';
import { provedAt } from '#tests/core/job/proved-at.ts';
import { type AppHost, startApp } from './app-host.ts';
import { axeFaults } from './axe-faults.ts';

test.describe.configure({ mode: 'serial' });

/** An order is worked out beside everything else the machine does. */
const expect = expectSoon.configure({ timeout: 40_000 });

let app: AppHost;
let page: Page;

const wiper: RequestInput<'job.create'> = {
  mapId: 'map:orlune-pivet',
  vehicle: { plate: 'PAST', odometer: 80_000, odometerUnit: 'mi' },
  complaint: 'Rear wiper fuse blows',
  failureType: 'circuit-short-to-ground',
  circuitId: 'circuit:wiper-feed',
  alsoFailingCircuitIds: [],
  workingCircuitIds: [],
};

/** Asks the host what the page itself would ask, to set the scene without a hundred clicks. */
async function ask<N extends RequestName>(name: N, input: RequestInput<N>): Promise<Record<string, unknown>> {
  return await page.evaluate(
    async ([path, header, body]) => {
      const token = sessionStorage.getItem('undertrim.launch') ?? '';
      const headers = { 'Content-Type': 'application/json', [header]: token };
      const reply = await fetch(path, { method: 'POST', headers, body });
      const { ok, value } = (await reply.json()) as { ok: boolean; value: Record<string, unknown> };
      if (!ok) throw new Error(path);
      return value;
    },
    [`/request/${name}`, tokenHeader, JSON.stringify(input)] as const,
  );
}

/** A closed job that found the wiper feed worn through on the left sill, where no rub spot is drawn. */
async function closedJob(plate: string): Promise<void> {
  const made = await ask('job.create', { ...wiper, vehicle: { ...wiper.vehicle, plate } });
  const at = '2026-03-02T10:00:00Z';
  await ask('job.append', {
    jobId: made.jobId as `job:${string}`,
    expectedEntries: 0,
    entries: [
      ...provedAt([{ segmentId: 'segment:left-sill', fromMm: 300, toMm: 420 }]),
      { id: 'entry:end', at, type: 'close', outcome: 'proved', reason: '', advice: '' },
    ],
  });
}

test.beforeAll(async ({ browser }) => {
  app = await startApp();
  page = await browser.newPage();
  await page.goto(app.address);
  await page.getByText('STOCK 417').waitFor();
});

test.afterAll(async () => {
  await page.close();
  await app.end();
});

const button = (name: string | RegExp): Locator => page.getByRole('button', { name });
const openings = (): Locator => page.locator('.dig-entry');
/** The opening whose own head names a panel. */
const opening = (panel: string): Locator =>
  openings()
    .filter({ has: page.locator('.dig-head', { hasText: panel }) })
    .first();
const chanceOf = async (panel: string): Promise<number> =>
  Number(/(\d+)\s*%/.exec((await opening(panel).locator('.dig-head').textContent()) ?? '')?.[1]);
const known = (): Locator => button(/^Known beforehand/);
const wishes = (): Locator => button(/^Wishes for this order/);
const settled = async (): Promise<void> => {
  await expect(page.locator('.what-changed')).toHaveAttribute('data-thinking', 'false');
};

test('two closed jobs on a model change the order of the third', async () => {
  for (const plate of ['PAST 1', 'PAST 2']) await closedJob(plate);
  await page.reload();
  await button(/^New job on Orlune Pivet/).click();
  await page.getByLabel('Plate or stock number').fill('STOCK 3');
  await page.getByLabel('Failure type').selectOption({ label: 'Short to earth' });
  await page.getByLabel('Circuit under search').selectOption({ label: 'Rear wiper feed' });
  await page.getByRole('checkbox', { name: 'Tow bar' }).check();
  await page.getByRole('group', { name: 'The fault shows' }).getByLabel('On bumps').check();
  await button('Start the job').click();
  await expect(opening('Left front tread plate')).toContainText(
    /Two finds on this model raised this from \d+ to \d+ %/,
  );
  await settled();
  await known().click();
  await expect(page.getByText('Two on this model, 2 in all that teach something.')).toBeVisible();
  await expect(
    page.getByText(/Two finds on this model raised “trodden on under the carpet”/).first(),
  ).toBeVisible();
});

test('one switch leaves past jobs out, for this job and until it is switched back', async () => {
  const taught = await chanceOf('Left front tread plate');
  const use = page.getByRole('checkbox', { name: 'Let past jobs change this order' });
  await use.uncheck();
  await expect.poll(() => chanceOf('Left front tread plate')).toBeLessThan(taught);
  await expect(known()).toContainText('without past jobs');
  await expect(opening('Left front tread plate')).not.toContainText('on this model');

  await expect(page.getByText('On disk')).toBeVisible();
  await app.kill();
  app = await startApp(app.folder);
  await page.goto(app.address);
  await page.getByText('STOCK 3').click();
  await expect(known()).toContainText('without past jobs');

  await button('Undo').click();
  await expect.poll(() => chanceOf('Left front tread plate')).toBe(taught);
});

test('what was done lately raises the places it touched, and can be put right later', async () => {
  await settled();
  await expect(opening('Left hinge gaiter')).toContainText(/Tow bar: raised this from \d+ to \d+ %/);
  const raised = await chanceOf('Left hinge gaiter');
  await known().click();
  const asked = page.getByRole('region', { name: 'Asked at intake' });
  await expect(asked).toContainText(/Tow bar: raises Left hinge gaiter most, from \d+ to \d+ %/);
  await asked.getByRole('button', { name: 'Change the answers' }).click();
  await page.getByRole('checkbox', { name: 'Tow bar' }).uncheck();
  await page.getByRole('checkbox', { name: 'Windscreen' }).check();
  await button('Keep').click();
  await expect.poll(() => chanceOf('Left hinge gaiter')).toBeLessThan(raised);
  await expect(asked).not.toContainText('Tow bar');
  await expect(asked).toContainText('Windscreen');
  await expect(page.locator('.what-changed')).toContainText('After “intake changed”');
  await known().click();
});

test('the first openings say whether they would stand under other constants', async () => {
  const firm = /Firm: stands here in|Could be either: this or|Not settled: several/;
  await expect(openings().first()).toContainText(firm, { timeout: 60_000 });
  await expect(openings().nth(1)).toContainText(/To begin here instead costs|As good a start/);
});

test('a panel that is not to come off today is left out, and comes back when wished', async () => {
  const first = (await openings().first().locator('.dig-title').textContent()) ?? '';
  await openings()
    .first()
    .getByRole('button', { name: /: not today$/ })
    .click();
  await expect(openings().first().locator('.dig-title')).not.toHaveText(first);
  await expect(page.getByRole('region', { name: 'Staying on today' })).toContainText(/\d+ % of the chance/);
  await expect(page.locator('.what-changed')).toContainText(`After “Not today: ${first}”`);
  await expect(wishes()).toContainText('one wish');
  await button(new RegExp(`^${first}: off after all`)).click();
  await expect(openings().first().locator('.dig-title')).toHaveText(first);
  await expect(wishes()).toContainText('no wishes');
});

test('what comes out anyway costs nothing, and what is off already is not asked for again', async () => {
  await wishes().click();
  await page
    .getByLabel('Left front tread plate', { exact: true })
    .selectOption({ label: 'Coming out anyway' });
  const tread = opening('Left front tread plate');
  await expect
    .poll(async () => (await openings().first().locator('.dig-title').textContent()) ?? '')
    .toBe('Left front tread plate');
  await expect(tread.locator('.take-off')).toContainText('anyway');
  await page.getByLabel('Left front tread plate', { exact: true }).selectOption({ label: 'Off already' });
  await expect(button(/^1 off, to refit/)).toBeVisible();
  await page
    .getByLabel('Left front tread plate', { exact: true })
    .selectOption({ label: 'As the list has it' });
  await expect(page.getByText('All panels on')).toBeVisible();
});

test('with twenty minutes the list holds what fits into them, also after a power cut', async () => {
  await page.getByLabel('Other', { exact: true }).fill('a while');
  await button('Set minutes').click();
  await expect(page.getByText('Enter minutes from 1 to 1440, or choose no limit.')).toBeVisible();
  await button('20 min').click();
  const box = page.getByRole('region', { name: 'What can be seen within 20 minutes' });
  await expect(box).toContainText(/\d+ % chance of seeing the fault, in \d+ min/);
  await expect(box).toContainText(/No other choice|No choice can have more/);
  const runs = await page.locator('.dig-running').allTextContents();
  expect(runs.length).toBeGreaterThan(0);
  for (const run of runs) expect(Number(/By then (\d+) min/.exec(run)?.[1])).toBeLessThanOrEqual(20);

  await expect(page.getByText('On disk')).toBeVisible();
  await app.kill();
  app = await startApp(app.folder);
  await page.goto(app.address);
  await page.getByText('STOCK 3').click();
  await expect(box).toBeVisible();
  await box.getByRole('button', { name: 'No limit' }).click();
  await expect(box).toBeHidden();
  await expect(openings().nth(3)).toBeVisible();
});

test('another order than the list’s is told what it costs', async () => {
  await settled();
  const later = openings()
    .filter({ hasText: /To begin here instead costs/ })
    .last();
  await later.locator('.dig-head').click();
  const unread = later.getByRole('button', { name: /Before this step|Whole text/ });
  if (await unread.first().isVisible()) {
    await unread.first().click();
    await later.getByRole('button', { name: /read and understood/ }).click();
  }
  await later
    .getByRole('button', { name: /mark off$/ })
    .first()
    .click();
  await expect(page.locator('.what-changed')).toContainText(
    /Taken out of order: (about \d+ min more on average|as good a start as the first)/,
  );
  await button('Undo').click();
});

test('where it could be either of two, both are named, and still are when only minutes are left', async () => {
  const made = await ask('job.create', {
    ...wiper,
    mapId: 'map:brannock-scarp',
    vehicle: { ...wiper.vehicle, plate: 'EITHER' },
    failureType: 'circuit-open',
    circuitId: 'circuit:right-tail',
  });
  const before = page.url();
  await page.goto(`${before.replace(/#.*/, '')}#/job/${String(made.jobId)}`);
  const either = /Could be either: this or (Spare wheel, lowered|Glovebox)/;
  await expect(openings().first()).toContainText(either);
  await settled();
  await wishes().click();
  await button('20 min').click();
  await expect(page.getByRole('region', { name: 'What can be seen within 20 minutes' })).toBeVisible();
  await expect(openings().first()).toContainText(either);
  await wishes().click();
  await page.goto(before);
  await expect(openings().first()).toBeVisible();
});

test('a cause in a plug is said to be in it, and the mark stands there', async () => {
  const made = await ask('job.create', {
    ...wiper,
    mapId: 'map:brannock-scarp',
    vehicle: { ...wiper.vehicle, plate: 'PLUG' },
    failureType: 'circuit-open',
    circuitId: 'circuit:right-tail',
  });
  const before = page.url();
  await page.goto(`${before.replace(/#.*/, '')}#/job/${String(made.jobId)}`);
  const look = openings().filter({ hasText: 'Part Rail end plug and look in' }).first();
  await look.locator('.dig-head').click();
  await look.getByRole('button', { name: 'Cause found' }).click();
  const found = page.getByRole('region', { name: 'Cause found' });
  const asked = found.getByRole('group', { name: 'What was it in?' });
  await asked.getByLabel('In Rail end plug').check();
  await expect(found.locator('header')).toContainText('In Rail end plug');
  await expect(found).toContainText('Renew or re-seat the pin');
  await button('Undo').click();
  await expect(found.locator('header')).toContainText('m from Rail end plug');
  await page.goto(before);
  await expect(openings().first()).toBeVisible();
});

test('another workshop’s drawing of a map that is here says what differs, and becomes no second copy', async () => {
  const handed = await ask('file.handOutBundle', { mapId: 'map:orlune-pivet', withHistory: true });
  const { text } = await ask('file.handOut', { mapId: 'map:orlune-pivet' });
  const map = JSON.parse(String(text)) as { revision: number; panels: { id: string; name: string }[] };
  const first = map.panels[0];
  if (!first) throw new Error('the hatchback has panels');
  first.name = 'Their name for it';
  map.revision += 1;
  const before = page.url();
  await page.goto(before.replace(/#.*/, '#/'));
  const cards = page.getByRole('button', { name: /^New job on Orlune Pivet/ });
  await expect(cards).toHaveCount(1);
  const file = page.locator('input[type=file]');
  await button('Bring in a file').click();
  const buffer = Buffer.from(String(handed.base64), 'base64');
  await file.setInputFiles({ name: 'history.zip', mimeType: 'application/zip', buffer });
  const form = page.getByRole('region', { name: 'Bring in a file' });
  await expect(form).toContainText('without their customers: 0 new, 2 here already and left as they are.');
  await form.getByRole('button', { name: 'Cancel' }).click();
  await button('Bring in a file').click();
  const theirs = Buffer.from(JSON.stringify(map));
  await file.setInputFiles({ name: 'theirs.json', mimeType: 'application/json', buffer: theirs });
  await expect(form).toContainText('Changed: Panel “Their name for it” (name)');
  expect(await axeFaults(page)).toEqual([]);
  await form.getByLabel('Ours', { exact: true }).check();
  await expect(form).toContainText('With ours kept, nothing of it would be stored.');
  await form.getByLabel('Theirs').check();
  await form.getByRole('button', { name: 'Keep it' }).click();
  await expect(page.getByText('is kept.')).toBeVisible();
  await expect(cards).toHaveCount(1);
  const { map: kept } = await ask('map.open', { mapId: 'map:orlune-pivet' });
  expect((kept as typeof map).panels.find(({ id }) => id === first.id)?.name).toBe('Their name for it');
  await page.goto(before);
  await expect(openings().first()).toBeVisible();
});

for (const size of [
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
]) {
  for (const colorScheme of ['light', 'dark'] as const) {
    test(`nothing is amiss at ${size.width} by ${size.height}, ${colorScheme}`, async () => {
      await page.setViewportSize(size);
      await page.emulateMedia({ colorScheme });
      for (const tool of [known(), wishes()]) {
        await tool.click();
        expect(await axeFaults(page)).toEqual([]);
        expect(await tooSmall()).toEqual([]);
        const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
        expect(wide).toBeLessThanOrEqual(0);
        await tool.click();
      }
      await button('Change intake').click();
      await expect(page.getByRole('group', { name: 'The fault shows' })).toBeVisible();
      expect(await axeFaults(page)).toEqual([]);
      await page.keyboard.press('Escape');
    });
  }
}

/** Things to press in the dig column that are less than 44 px in one direction, by their words. */
async function tooSmall(): Promise<readonly string[]> {
  return await page.locator('.dig-column').evaluate((column) =>
    [...column.querySelectorAll('button, select, input, label.checkbox, a')].flatMap((each) => {
      const target = each instanceof HTMLInputElement ? (each.closest('label') ?? each) : each;
      const { width, height } = target.getBoundingClientRect();
      return width > 0 && (width < 43.5 || height < 43.5)
        ? [each.textContent || each.outerHTML.slice(0, 80)]
        : [];
    }),
  );
}
