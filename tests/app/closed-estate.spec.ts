import { expect, type Locator, type Page, test } from '@playwright/test';
import { type AppHost, startApp } from './app-host.ts';
import { axeFaults } from './axe-faults.ts';
import { cameraPhoto, givePhoto } from './camera-photo.ts';
import { closingHand } from './closing-hand.ts';

test.describe.configure({ mode: 'serial' });

let app: AppHost;
let page: Page;
let hand: ReturnType<typeof closingHand>;

test.beforeAll(async ({ browser }) => {
  app = await startApp();
  page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  hand = closingHand(page);
  await page.goto(app.address);
});

test.afterAll(async () => {
  await page.close();
  await app.end();
});

test('the estate whose rear wiper jumps in reverse is taken in', async () => {
  await hand.takeIn({
    model: /^New job on Varnholt Aldine/,
    plate: 'STOCK 620',
    odometer: '142000',
    complaint: 'Rear wiper jumps when reverse is selected',
    failureType: 'Signal jumps about',
    circuit: 'Rear wiper park wire',
    failsToo: 'Reverse-lamp feed',
    disturbed: 'Tow bar',
  });
  expect(await axeFaults(page)).toEqual([]);
});

test('ohms from wire to wire, taken at both ends, put the boot side trim first', async () => {
  const near = await hand.beginReading('Ohms');
  await near.getByRole('button', { name: /^Meter and note/ }).click();
  await near.getByLabel('Meter', { exact: true }).selectOption({ label: 'Hand meter, 0.01 ohm' });
  await near.getByLabel('Second lead').selectOption({ label: 'Body module (Reverse-lamp feed), pin C4' });
  await near.getByLabel('Meter shows, Ω').fill('0.51');
  await hand.keepReading();
  const far = await hand.beginReading('Ohms');
  await far.getByLabel('First lead').selectOption({ label: 'Rear plug, pin 9' });
  await far.getByLabel('Second lead').selectOption({ label: 'Rear plug (Reverse-lamp feed), pin 8' });
  await far.getByLabel('Meter shows, Ω').fill('0.39');
  await hand.keepReading();
  await expect(hand.opening('Left boot side trim')).toBeVisible();
});

test('behind the side trim both wires are found crushed', async () => {
  await hand.openAndLook('Left boot side trim', 'Cause found');
  await hand.toClose();
  expect(await axeFaults(page)).toEqual([]);
});

test('photos come by file, paste and drop, each upright by what the camera noted', async () => {
  const cause = hand.step('What was found').getByRole('article', { name: /^Cause found/ });
  await hand.describe(cause, {
    damage: 'Pinched',
    why: 'Wiring or parts added later',
    wire: 'Rear wiper park wire',
    note: 'Both wires crushed by the bracket of the added tow module.',
  });
  const photos = cause.locator('.photo-list img.photo');
  await cause.locator('input[type=file]').setInputFiles({
    name: 'file.jpg',
    mimeType: 'image/jpeg',
    buffer: await cameraPhoto(page, 'rgb(20, 20, 220)'),
  });
  await expect(photos).toHaveCount(1);
  await givePhoto(page, 'paste', '', await cameraPhoto(page, 'rgb(20, 160, 20)'), 'paste.jpg');
  await expect(photos).toHaveCount(2);
  const dropped = await cameraPhoto(page, 'rgb(200, 200, 20)');
  await givePhoto(page, 'drop', '.photo-input', dropped, 'drop.jpg');
  await expect(photos).toHaveCount(3);
  await givePhoto(page, 'drop', '.photo-input', dropped, 'drop again.jpg');
  await expect(page.locator('.photo-input progress')).toHaveCount(0);
  await expect(photos).toHaveCount(3);
  for (const photo of await photos.all()) {
    const seen = await photo.evaluate((image: HTMLImageElement) => {
      const canvas = document.createElement('canvas');
      canvas.width = image.naturalWidth;
      canvas.height = image.naturalHeight;
      const context = canvas.getContext('2d');
      context?.drawImage(image, 0, 0);
      const [red = 0, green = 0] = context?.getImageData(200, 40, 1, 1).data ?? [];
      return { width: canvas.width, height: canvas.height, redOnTop: red > 180 && green < 80 };
    });
    expect(seen).toEqual({ width: 400, height: 800, redOnTop: true });
  }
  await cause.getByLabel('Words under photo 1').fill('Park wire and reverse feed, crushed');
  await cause.getByRole('button', { name: 'Keep this find' }).click();
  await hand.prove();
});

test('a power cut in the middle loses nothing, not even what is being typed', async () => {
  const repair = (): Locator =>
    hand
      .step('Repair, and what stops it rubbing now')
      .getByRole('article', { name: /^Proved cause/ })
      .getByLabel('Note');
  const advice = (): Locator => hand.step('Close the job').getByLabel('Advice for the customer');
  await repair().fill('Two joins, 50 mm apart; bra');
  const typed = page.waitForResponse(
    (reply) => reply.url().endsWith('place.keep') && (reply.request().postData()?.includes('drain') ?? false),
  );
  await advice().fill('Have the drain gro');
  await typed;
  await expect(page.getByText('On disk')).toBeVisible();
  await app.kill();
  app = await startApp(app.folder);
  await page.goto(app.address);
  await page.getByText('STOCK 620').click();
  await page.getByRole('link', { name: 'Repair and close' }).first().click();
  const cause = hand.step('What was found').getByRole('article', { name: 'Proved cause', exact: true });
  await expect(cause).toContainText('Both wires crushed by the bracket');
  await expect(cause.locator('img.photo')).toHaveCount(3);
  await expect(cause.getByRole('button', { name: 'Take back: Proof of the cause' })).toBeVisible();
  await expect(repair()).toHaveValue('Two joins, 50 mm apart; bra');
  await expect(advice()).toHaveValue('Have the drain gro');
});

test('the repair is proved with the circuit’s own figures: wire to wire an open line', async () => {
  await hand.repair(
    /^Proved cause/,
    ['Closed crimp under adhesive-lined heat-shrink', 'Joins staggered', 'Bracket moved'],
    '2',
  );
  await hand.lookAlong();
  const proof = hand.step('Proof: the same tests again');
  const tests = proof.getByRole('listitem').filter({ hasText: 'Ohms' });
  await expect(tests).toHaveCount(2);
  await expect(tests.first()).toContainText('Good is: open line');
  await tests.first().getByLabel('Reading after the repair').fill('0.5');
  await expect(tests.first()).toContainText('This is not what a sound circuit shows.');
  await expect(tests.first().getByRole('button', { name: /^Good:/ })).toBeDisabled();
  for (let n = 0; n < 2; n++) {
    const test = tests.nth(n);
    await test.getByRole('checkbox', { name: 'Open line' }).check();
    await test.getByRole('button', { name: /^Good:/ }).click();
    await expect(test).toContainText('open line');
  }
  await hand.allGood();
  expect(await axeFaults(page)).toEqual([]);
});

test('refitted and closed, its report tells the readings before and after', async () => {
  await hand.refit();
  await hand.close();
  await page.getByRole('link', { name: 'Customer’s report' }).click();
  const sheet = page.locator('.sheet[data-ready=true]');
  await expect(sheet).toContainText('0.51 Ω');
  await expect(sheet).toContainText('open line');
  await expect(sheet).toContainText('Bracket moved');
  await expect(sheet.getByRole('img', { name: 'Park wire and reverse feed, crushed' })).toBeVisible();
  expect(await axeFaults(page)).toEqual([]);
});

test('the same fault weeks later: the job opens again and the search goes on with what is left', async () => {
  await page.getByRole('link', { name: 'Back to the job' }).click();
  await hand.step('Close the job').getByRole('button', { name: 'Search on with what is left' }).click();
  await expect(page.getByRole('tab', { name: 'Where to open first' })).toBeVisible();
  await expect(page.locator('.dig-entry').first()).toBeVisible({ timeout: 40_000 });
  await page.getByRole('tab', { name: 'Record' }).click();
  await expect(page.locator('.record-words').getByText('Fault still there: search goes on')).toBeVisible();
  await expect(page.getByRole('listitem').filter({ hasText: '0.51 Ω' }).first()).toBeVisible();
});
