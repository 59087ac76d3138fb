import { spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { deflateSync } from 'node:zlib';
import { expect, type Locator, type Page, test } from '@playwright/test';
import { type AppHost, startApp } from './app-host.ts';
import { axeFaults as axeFaultsOf } from './axe-faults.ts';
import { closingHand } from './closing-hand.ts';

const results = join(import.meta.dirname, '../results/closed-job');

test.describe.configure({ mode: 'serial' });

let app: AppHost;
let page: Page;

test.beforeAll(async ({ browser }) => {
  mkdirSync(results, { recursive: true });
  app = await startApp();
  page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  await page.goto(app.address);
});

test.afterAll(async () => {
  await page.close();
  await app.end();
});

const button = (name: string | RegExp): Locator => page.getByRole('button', { name });
const step = (name: string): Locator => page.getByRole('region', { name });

const axeFaults = (): Promise<readonly string[]> => axeFaultsOf(page);

/** Pages of a PDF, counted from its page objects. */
const pagesOf = (pdf: Buffer): number => pdf.toString('latin1').match(/\/Type\s*\/Page(?!s)/g)?.length ?? 0;

/** Saves a PDF and, where the tool for it is on this machine, each page as a picture to look at. */
function keepPdf(name: string, pdf: Buffer): void {
  const file = join(results, `${name}.pdf`);
  writeFileSync(file, pdf);
  const drawn = spawnSync('pdftoppm', ['-r', '70', '-png', file, join(results, name)]);
  if (drawn.error) test.info().annotations.push({ type: 'not drawn', description: 'pdftoppm is not here' });
  else expect(drawn.status).toBe(0);
}

/** A photo as a camera gives it: a PNG of one colour, wide as it came. */
function photo(widthPx: number, heightPx: number): Buffer {
  const crc = (bytes: Buffer): number => {
    let c = ~0;
    for (const byte of bytes) {
      c ^= byte;
      for (let k = 0; k < 8; k++) c = c & 1 ? (c >>> 1) ^ 0xedb88320 : c >>> 1;
    }
    return ~c >>> 0;
  };
  const chunk = (type: string, data: Buffer): Buffer => {
    const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
    const out = Buffer.alloc(body.length + 8);
    out.writeUInt32BE(data.length, 0);
    body.copy(out, 4);
    out.writeUInt32BE(crc(body), body.length + 4);
    return out;
  };
  const head = Buffer.alloc(13);
  head.writeUInt32BE(widthPx, 0);
  head.writeUInt32BE(heightPx, 4);
  head.set([8, 2, 0, 0, 0], 8);
  const rows = Buffer.alloc((widthPx * 3 + 1) * heightPx, 140);
  for (let y = 0; y < heightPx; y++) rows[y * (widthPx * 3 + 1)] = 0;
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

test('the bench sheet of every sample job is one page, whatever the paper', async () => {
  const start = app.address.replace(/#.*$/, '#/');
  for (const stock of ['STOCK 417', 'STOCK 582', 'STOCK 733']) {
    await page.goto(start);
    await page.getByText(stock).click();
    await page.getByRole('link', { name: 'Repair and close' }).first().click();
    await page.getByRole('link', { name: 'Bench sheet' }).click();
    const sheet = page.locator('.sheet[data-ready=true]');
    await expect(sheet.locator('.bench-step').first()).toBeVisible({ timeout: 40_000 });
    expect(await axeFaults()).toEqual([]);
    for (const format of ['A4', 'Letter'] as const) {
      const pdf = await page.pdf({ format, printBackground: true });
      keepPdf(`bench-${stock.slice(-3)}-${format.toLowerCase()}`, pdf);
      expect(pagesOf(pdf), `${stock} on ${format}`).toBe(1);
    }
  }
  await page.goto(start);
});

test('the rear wiper car is opened at the C-pillar and the cause is proved', async () => {
  await page.getByText('STOCK 417').click();
  const clock = page.getByRole('button', { name: 'Clock: Find', exact: true });
  await clock.click();
  await expect(clock).toHaveAttribute('aria-pressed', 'true');
  const first = page.locator('.dig-entry').first();
  await expect(first).toContainText('C-pillar');
  await closingHand(page).openAndLook('Left C-pillar trim', 'Cause found');
  await expect(page.getByRole('heading', { name: 'Cause found, not proved yet' })).toBeVisible();
  expect(await axeFaults()).toEqual([]);
  await page
    .getByRole('region', { name: 'Cause found, not proved yet' })
    .getByRole('link', { name: 'Repair and close' })
    .click();
  await expect(step('What was found')).toBeVisible();
});

test('nothing may be closed before it is proved, and what is missing is said', async () => {
  const end = step('Close the job');
  await expect(end.getByText('No cause is described.')).toBeVisible();
  await expect(end.getByRole('button', { name: 'Close the job' })).toBeDisabled();
  expect(await axeFaults()).toEqual([]);
});

test('the find is described with a photo, and proved in its three parts', async () => {
  const found = step('What was found');
  const cause = found.getByRole('article', { name: /^Cause found/ });
  await button('Keep this find').click();
  await expect(cause.getByText('Say what is wrong with the wire.')).toBeVisible();
  await expect(cause.getByText('Say why, or choose')).toBeVisible();
  await cause.getByLabel('Damage', { exact: true }).selectOption({ label: 'Chafed through' });
  await cause.getByLabel('Why').selectOption({ label: 'Rubs on an edge or flange' });
  await cause
    .getByLabel('Note')
    .fill('Spot-weld flange behind the belt guide; loom moved when speakers were fitted.');
  await cause
    .locator('input[type=file]')
    .setInputFiles({ name: 'c-pillar.png', mimeType: 'image/png', buffer: photo(2600, 1600) });
  await expect(cause.locator('img.photo')).toBeVisible({ timeout: 20_000 });
  await cause.getByLabel('Words under photo 1').fill('Wiper feed on the flange');
  const photoSize = await cause
    .locator('img.photo')
    .evaluate((image: HTMLImageElement) => image.naturalWidth);
  expect(photoSize).toBe(2000);
  await button('Keep this find').click();
  const notYet = found.getByRole('article', { name: 'Cause found, not proved yet' });
  await expect(notYet).toContainText('Chafed through');
  for (const part of ['The damage was seen', 'The damaged wire belongs']) {
    await notYet.getByRole('checkbox', { name: new RegExp(part) }).check();
  }
  await notYet.getByRole('button', { name: 'Keep the proof' }).click();
  const refused = found.getByRole('article', { name: 'Found, not proved to be the cause' });
  await expect(refused.getByRole('button', { name: 'Not the cause: search on' })).toBeVisible();
  await refused.getByRole('checkbox', { name: /Moving it, or holding it clear/ }).check();
  await refused.getByRole('button', { name: 'Keep the proof' }).click();
  const described = found.getByRole('article', { name: 'Proved cause', exact: true });
  await expect(described.getByRole('button', { name: 'Take back: Proof of the cause' })).toBeVisible();
});

test('damage that was not the cause is described too, and keeps the job open', async () => {
  const found = step('What was found');
  const other = found.getByRole('article', { name: /^Seen, damaged, not the cause/ });
  await other.getByRole('button', { name: 'Describe this find' }).click();
  await other
    .getByLabel('Damaged wire')
    .selectOption({ label: 'Number-plate lamp' })
    .catch(async () => {
      await other.getByLabel('Damaged wire').selectOption({ index: 0 });
    });
  await other.getByLabel('Damage', { exact: true }).selectOption({ label: 'Chafed through' });
  await other.getByLabel('Why').selectOption({ label: 'Bends with a hinge' });
  await other.getByRole('button', { name: 'Keep this find' }).click();
  await expect(found.getByText('Not the cause. The job stays open')).toBeVisible();
});

test('a repair warns of joins side by side, heat at the trim, and an edge left bare', async () => {
  const repair = step('Repair, and what stops it rubbing now');
  const cause = repair.getByRole('article', { name: /^Proved cause/ });
  await cause.getByRole('checkbox', { name: 'Closed crimp under adhesive-lined heat-shrink' }).check();
  await cause.getByLabel('Joins', { exact: true }).fill('2');
  await expect(cause.getByText('stagger them so that no two sit side by side')).toBeVisible();
  await expect(cause.getByText('Say what stops it rubbing now.')).toBeVisible();
  await expect(cause.getByText('shield trim, headlining and airbag fabric')).toBeVisible();
  await cause.getByRole('checkbox', { name: 'Joins staggered, 40 mm apart or more' }).check();
  await cause.getByRole('checkbox', { name: 'Edge trim on the edge' }).check();
  await cause.getByRole('checkbox', { name: 'Fixing renewed' }).check();
  await expect(cause.getByText('stagger them so that no two sit side by side')).toHaveCount(0);
  await expect(cause.getByText('Say what stops it rubbing now.')).toHaveCount(0);
  await cause.getByRole('button', { name: 'Keep the repair' }).click();
  await expect(cause.getByText('Edge trim on the edge, Fixing renewed')).toBeVisible();

  const other = repair.getByRole('article', { name: /^Damaged, not the cause/ });
  await other.getByRole('button', { name: 'Keep the repair' }).click();
  await other.getByRole('checkbox', { name: 'New length let in' }).check();
  await other.getByRole('checkbox', { name: 'Joins moved off the bend' }).check();
  await other.getByRole('checkbox', { name: 'Slack given for full travel' }).check();
  await other.getByRole('button', { name: 'Keep the repair' }).click();
  await expect(other.getByText('Slack given for full travel')).toBeVisible();
  const along = step('Look along the loom');
  await along.getByRole('button', { name: 'Keep the look' }).click();
  await expect(along.getByText('Say what was seen')).toHaveCount(2);
  await closingHand(page).lookAlong();
  await expect(along.getByRole('button', { name: 'Take back: Look along the loom' })).toBeVisible();
});

test('a test still bad offers to search on; taken back and good, it counts', async () => {
  const proof = step('Proof: the same tests again');
  await proof.getByRole('button', { name: 'Still bad: Function' }).click();
  await expect(proof.getByText('The fault is still there')).toBeVisible();
  await expect(step('Close the job').getByText('Still bad after the repair')).toBeVisible();
  await proof.getByRole('button', { name: 'Try again: Function' }).click();
  await expect(proof.getByText('The fault is still there')).toHaveCount(0);
  // The lamp in place of the fuse stays dark.
  await proof.getByLabel('Current after the repair').fill('0');
  for (let n = 0; n < 12; n++) {
    const good = proof.getByRole('button', { name: /^Good:/ });
    if ((await good.count()) === 0) break;
    await good.first().click();
    await page.waitForTimeout(150);
  }
  await expect(proof.getByRole('button', { name: /^Good:/ })).toHaveCount(0);
});

test('what came off goes back on, cautions read first', async () => {
  const refit = step('Refit');
  for (let n = 0; n < 20; n++) {
    const understood = refit.getByRole('button', { name: /read and understood/ });
    const on = refit.getByRole('button', { name: /^Back on/ });
    if (await understood.count()) await understood.first().click();
    else if (await on.count()) await on.first().click();
    else break;
    await page.waitForTimeout(150);
  }
  await expect(refit.getByText('Everything that came off is back on.')).toBeVisible();
});

test('the limit agreed is extended, and what was spent stands against it', async () => {
  const money = step('Time and money');
  await money.getByLabel('Limit', { exact: true }).fill('60');
  await money.getByLabel('Agreed by').fill('Owner, by telephone');
  await money.getByRole('button', { name: 'Keep the limit' }).click();
  await money.getByLabel('On top of the limit').fill('60');
  await money.getByRole('button', { name: 'Keep the extension' }).click();
  await expect(money.getByText('Extension: 60 min')).toBeVisible();
  await money.getByRole('button', { name: 'Put a clock right' }).click();
  await money.getByLabel('Minutes to add').fill('40');
  await money.getByRole('button', { name: 'Put right' }).click();
  await expect(page.locator('.close-header')).toContainText('of 120 min');
});

test('the job is closed as proved, survives a power cut, and can be opened again', async () => {
  const end = step('Close the job');
  await end.getByLabel('Advice for the customer').fill('The gaiter is old; look at it at the next service.');
  await expect(end.getByText('Nothing is missing.')).toBeVisible();
  await end.getByRole('button', { name: 'Close the job' }).click();
  await expect(end.getByText('Closed: Proved and cured')).toBeVisible();
  await expect(page.getByText('On disk')).toBeVisible();
  expect(await axeFaults()).toEqual([]);
  await app.kill();
  app = await startApp(app.folder);
  await page.goto(app.address);
  await page.getByRole('button', { name: 'Past jobs' }).click();
  await page.getByLabel('Search all jobs').fill('flange');
  await expect(page.getByRole('button', { name: /STOCK 417/ })).toContainText('Proved and cured');
  await page.getByLabel('Search all jobs').fill('rubs edge');
  await expect(page.getByRole('button', { name: /STOCK 417/ })).toBeVisible();
  await page.getByRole('button', { name: 'Finding, in figures' }).click();
  await expect(page.getByText(/1 closed, 1 with the cause proved/)).toBeVisible();
  expect(await axeFaults()).toEqual([]);
});

test('the model page shows where it chafes', async () => {
  await page.getByRole('link', { name: /^Where it chafes: Orlune Pivet/ }).click();
  await expect(page.getByRole('img', { name: /every place where something was found/ })).toBeVisible();
  await expect(page.getByRole('row', { name: /Rubs on an edge or flange/ })).toBeVisible();
  expect(await axeFaults()).toEqual([]);
  await page.screenshot({ path: join(results, 'model.png') });
});

test('the report prints on A4 and Letter with its map, photo, readings and proof', async () => {
  await page.getByRole('button', { name: /STOCK 417/ }).click();
  await page.getByRole('link', { name: 'Repair and close' }).first().click();
  await page.getByRole('link', { name: 'Customer’s report' }).click();
  const sheet = page.locator('.sheet[data-ready=true]');
  await expect(sheet).toBeVisible();
  await expect(sheet.getByRole('img', { name: /the place marked/ })).toBeVisible();
  await expect(sheet.getByRole('img', { name: 'Wiper feed on the flange' })).toBeVisible();
  await expect(sheet).toContainText('Edge trim on the edge, Fixing renewed');
  await expect(sheet).toContainText('moving it, or holding it clear, makes the fault come and go');
  await expect(sheet).toContainText('The gaiter is old');
  expect(await axeFaults()).toEqual([]);
  for (const format of ['A4', 'Letter'] as const) {
    const pdf = await page.pdf({ format, printBackground: true });
    keepPdf(`report-${format.toLowerCase()}`, pdf);
    expect(pagesOf(pdf)).toBeGreaterThanOrEqual(1);
    expect(pagesOf(pdf)).toBeLessThanOrEqual(3);
  }
});

test('the close is whole in both lights and at every size, without sideways scrolling', async () => {
  await page.getByRole('link', { name: 'Back to the job' }).click();
  for (const theme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme: theme });
    for (const [width, height] of [
      [1024, 768],
      [2560, 1440],
    ] as const) {
      await page.setViewportSize({ width, height });
      await page.waitForTimeout(300);
      await page.screenshot({ path: join(results, `close-${theme}-${width}.png`) });
      const over = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      expect(over).toBeLessThanOrEqual(0);
      expect(await axeFaults()).toEqual([]);
    }
  }
});
